"""Runs inside Pyodide at build time: leaves out what the site never uses, and compiles the rest to bytecode.

The browser then reads bytecode, not source: Python starts in a third of the time, from as many bytes.
`folder` is set by precompile.mjs and holds python_stdlib.zip and the wheels.
"""

import os
import py_compile
import zipfile

# Modules of the standard library that neither the site nor its libraries import: servers and mail, debuggers and
# profilers, terminals, test runners, processes, Windows, and Python twins of modules that Pyodide has compiled.
LEFT_OUT = set(
    """
    _aix_support _android_support _apple_support _ios_support _osx_support _pydatetime _pydecimal _pyio _pyrepl
    antigravity bdb cProfile cmd compileall configparser ctypes curses dbm doctest ensurepip filecmp fileinput ftplib
    getpass idlelib imaplib mailbox modulefinder multiprocessing netrc optparse pdb pickletools plistlib poplib profile
    pstats pty py_compile pyclbr pydoc pydoc_data rlcompleter sched shelve smtplib socketserver sqlite3 symtable
    tabnanny this timeit tkinter trace tracemalloc tty turtle turtledemo unittest venv wave webbrowser wsgiref xmlrpc
    zipapp
    asyncio/proactor_events asyncio/windows_events asyncio/windows_utils concurrent/futures/process
    http/cookiejar http/cookies http/server logging/config logging/handlers xml/dom xml/etree
""".split()
)
CODECS_LEFT_OUT = ("cp", "hp_roman8", "iso8859_", "koi8_", "kz1048", "mac_", "palmos", "ptcp154", "tis_620")
CODECS_KEPT = ("cp437", "cp1252", "iso8859_1")  # cp437 names the files in a ZIP


def unused(name):
    module = name.removesuffix(".py")
    package, _, rest = module.partition("/")
    if package == "encodings":
        return rest.startswith(CODECS_LEFT_OUT) and rest not in CODECS_KEPT
    return any(module == left_out or module.startswith(left_out + "/") for left_out in LEFT_OUT)


def compiled(name, source, optimize):
    """Bytecode that Python takes as it is, without looking for the source."""
    with open("/tmp/module.py", "wb") as file:
        file.write(source)
    py_compile.compile(
        "/tmp/module.py",
        "/tmp/module.pyc",
        dfile=name,
        doraise=True,
        optimize=optimize,
        invalidation_mode=py_compile.PycInvalidationMode.UNCHECKED_HASH,
    )
    with open("/tmp/module.pyc", "rb") as file:
        return file.read()


def rewrite(path, skip, optimize):
    """Write the archive anew, in order of names and without dates, so that two builds are equal."""
    with zipfile.ZipFile(path) as archive:
        files = {name: archive.read(name) for name in sorted(archive.namelist()) if not name.endswith("/")}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as archive:
        for name, data in files.items():
            if skip(name):
                continue
            if name.endswith(".py"):
                name, data = name + "c", compiled(name, data, optimize)
            archive.writestr(zipfile.ZipInfo(name), data, zipfile.ZIP_DEFLATED, compresslevel=9)


for file in sorted(os.listdir(folder)):  # noqa: F821
    path = os.path.join(folder, file)  # noqa: F821
    if file == "python_stdlib.zip":
        # The standard library is made to run without docstrings (python -OO); other libraries are not.
        rewrite(path, unused, optimize=2)
    elif file.endswith(".whl"):
        rewrite(path, lambda name: "/testsuite/" in name or "/tests/" in name, optimize=0)
