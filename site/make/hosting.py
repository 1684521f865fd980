"""The headers that the site is served with, as files that the common kinds of static host read from the folder.

`_headers` is read by hosts of static sites and by build.py's own server, `.htaccess` by Apache's format of it, and
`web.config` by IIS's; `headers.nginx.conf` is to be included in a server block. All four say the same.
"""

from xml.sax.saxutils import quoteattr

# What a page may ask the device for: to put a link on the clipboard and to hand a file on, each after a tap; no more.
ALLOWED = ("clipboard-write", "web-share")
DENIED = (
    "accelerometer",
    "autoplay",
    "camera",
    "clipboard-read",
    "display-capture",
    "encrypted-media",
    "fullscreen",
    "geolocation",
    "gyroscope",
    "hid",
    "magnetometer",
    "microphone",
    "midi",
    "payment",
    "publickey-credentials-get",
    "screen-wake-lock",
    "serial",
    "usb",
    "xr-spatial-tracking",
)
# With nosniff, a script of any other type is not run.
TYPES = {".mjs": "text/javascript", ".wasm": "application/wasm", ".webmanifest": "application/manifest+json"}
FILES = ("_headers", ".htaccess", "headers.nginx.conf", "web.config")


def headers(policy):
    """{name: value}; the policy is that of the page."""
    permissions = [f"{name}=(self)" for name in ALLOWED] + [f"{name}=()" for name in DENIED]
    return {
        "Cache-Control": "no-cache",
        "Content-Security-Policy": policy,
        "Cross-Origin-Opener-Policy": "same-origin",
        "Cross-Origin-Resource-Policy": "same-origin",
        "Permissions-Policy": ", ".join(permissions),
        "Referrer-Policy": "no-referrer",
        "X-Content-Type-Options": "nosniff",
        "X-Frame-Options": "DENY",
    }


def write_headers(out):
    """Write FILES into the site's folder, with the policy of its csp.txt."""
    named = headers((out / "csp.txt").read_text(encoding="utf-8"))
    for name, lines in zip(FILES, (_plain(named), _htaccess(named), _nginx(named), _web_config(named)), strict=True):
        (out / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def _plain(named):
    return ["/*", *(f"  {name}: {value}" for name, value in named.items())]


def _htaccess(named):
    return [
        "<IfModule mod_mime.c>",
        *(f"  AddType {kind} {ending}" for ending, kind in TYPES.items()),
        "</IfModule>",
        # Without the module the rest would go out unprotected: better a failure that is seen.
        *(f'Header always set {name} "{value}"' for name, value in named.items()),
    ]


def _nginx(named):
    lines = ["# include headers.nginx.conf; in the server block of the site"]
    lines += [f'add_header {name} "{value}" always;' for name, value in named.items()]
    for ending, kind in TYPES.items():
        lines.append(f"location ~ \\{ending}$ {{ types {{ }} default_type {kind}; }}")
    return lines


def _web_config(named):
    lines = ['<?xml version="1.0" encoding="utf-8"?>', "<configuration>", "  <system.webServer>", "    <staticContent>"]
    for ending, kind in TYPES.items():
        lines.append(f'      <remove fileExtension="{ending}" />')
        lines.append(f'      <mimeMap fileExtension="{ending}" mimeType="{kind}" />')
    lines += ["    </staticContent>", "    <httpProtocol>", "      <customHeaders>"]
    lines += [f"        <add name={quoteattr(name)} value={quoteattr(value)} />" for name, value in named.items()]
    return [*lines, "      </customHeaders>", "    </httpProtocol>", "  </system.webServer>", "</configuration>"]
