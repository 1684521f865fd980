"""A design as a short readable link, and back. Links made by one version open in all later ones (v=1)."""

import re
from urllib.parse import parse_qsl, quote_plus, urlsplit

from .design import Design
from .errors import InputError, InputErrors
from .settings import BY_KEY, SETTINGS
from .units import DIMENSIONS

VERSION = "1"


def to_link(design, base=""):
    """`base#v=1&body_length=9in&...`: the settings that differ from the defaults, as they were typed."""
    parts = [f"v={VERSION}"]
    for setting in SETTINGS:
        if setting.key in design.texts:
            parts.append(f"{setting.key}={quote_plus(_short(setting, design.texts[setting.key]), safe='/,.-:')}")
    return base + "#" + "&".join(parts)


def _short(setting, text):
    """`6 1/2 in` as `6-1/2in`: a quantity without spaces. Words keep theirs; a fraction keeps its distance from what is before it."""
    if setting.dimension not in DIMENSIONS:
        return text
    return re.sub(r"(\d)\s+(\d+\s*/)", r"\1-\2", text.replace('"', "in")).replace(" ", "")


def from_link(link):
    """The design in a link, and what was not accepted.

    Arguments:
        link     a whole address, or what follows its # or ?
    Returns:
        (Design, list of InputError): settings that are unknown, bad or at odds are left at their defaults and named.
    """
    texts, ignored = {}, []
    for key, text in parse_qsl(_settings_part(link), keep_blank_values=True):
        if key == "v":
            if text != VERSION:
                ignored.append(InputError("v", text, f"is not a version this page knows; read as {VERSION}"))
        elif key not in BY_KEY:
            ignored.append(InputError(key, text, "is not a setting"))
        else:
            if texts.get(key, text) != text:
                ignored.append(InputError(key, texts[key], "is given twice; the last one counts", text))
            texts[key] = text
    while True:
        try:
            return Design.from_texts(texts), ignored
        except InputErrors as refused:
            before = len(texts)
            for error in refused.errors:
                ignored.append(error)
                _drop(texts, error)
            if len(texts) == before:  # the rule weighs only settings that were not in the link: start over
                texts.clear()


def _drop(texts, error):
    """Take the refused setting out of the link's; when it was not in the link, those it was weighed against."""
    for key in (error.field,) if error.field in texts else error.others:
        texts.pop(key, None)


def _settings_part(link):
    parts = urlsplit(link.strip())
    if parts.fragment:
        return parts.fragment
    if parts.query:
        return parts.query
    return (
        "" if parts.scheme else parts.path
    )  # an address alone is the default design; other words are named as unknown
