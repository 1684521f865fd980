"""Programs that judge the page, from npm: each by name, version and hash, kept in .cache/tools."""

import hashlib
import sys
import tarfile
from pathlib import Path

import build

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import runtime

CACHE = build.CACHE / "tools"
# name: version, sha256 of npm's archive, the one file that is used
TOOLS = {
    "axe-core": ("4.14.1", "e6b0ce02b84d892e2e33e403485e7f3d6c29e2be6df65daf44d89ba564139745", "axe.min.js"),
    "vnu-jar": ("26.9.27", "5970d3ffca91a627cf0965e5d91bb2e4242307c29292998de0b419d6a901b2b7", "build/dist/vnu.jar"),
}


def tool(name):
    """Path of a tool's file, fetched once."""
    version, sha256, member = TOOLS[name]
    file = CACHE / f"{name}-{version}" / Path(member).name
    if not file.exists():
        CACHE.mkdir(parents=True, exist_ok=True)
        archive = runtime.fetch_npm(CACHE, name, version)
        found = hashlib.sha256(archive.read_bytes()).hexdigest()
        assert found == sha256, f"{archive.name}: expected sha256 {sha256}, got {found}"
        with tarfile.open(archive) as packed:
            data = packed.extractfile(f"package/{member}").read()
        archive.unlink()
        file.parent.mkdir(exist_ok=True)
        file.write_bytes(data)
    return file
