"""The page with Python in the test's own process: for tests of what the page does, ready in a fraction of the time.

The worker is the built one up to where it starts the runtime; package, questions and answers are the same.
"""

import zlib
from functools import cache

import build
from burnercalc import worker

START = "async function start() {"
ASK = """const ours = (asked) => {
  const request = new XMLHttpRequest();
  request.open("POST", "./ask", false);
  request.send(asked);
  return request.responseText;
};
enter("loadRuntime");
handle = ours;
enter("ready");
next();
"""


def worker_text():
    text = (build.DIST / "worker.mjs").read_text(encoding="utf-8")
    assert text.count(START) == 1
    return text.partition(START)[0] + ASK


@cache
def answered(asked):
    """What Python says, worked out once: the worker is a function of its input, and every page asks for the example."""
    return worker.handle(asked)


def renamed(file, data, old, new):
    """A file's bytes with another name of its build; page.bin is packed."""
    if not file.endswith("page.bin"):
        return data.replace(old.encode(), new.encode())
    return zlib.compress(zlib.decompress(data).replace(old.encode(), new.encode()))


def host(context):
    """Answer the questions of every page of a context, which must block service workers."""
    text = worker_text()
    context.route("**/worker.mjs", lambda route: route.fulfill(content_type="text/javascript", body=text))
    context.route("**/ask", lambda route: route.fulfill(body=answered(route.request.post_data)))
    return context
