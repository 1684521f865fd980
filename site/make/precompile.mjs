// Runs precompile.py in the Pyodide of a folder, on that folder:  node precompile.mjs FOLDER
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const folder = resolve(process.argv[2]);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`));
// A fixed hash seed: sets then come out in the same order in every build.
const python = await loadPyodide({ env: { PYTHONHASHSEED: "0", HOME: "/home/pyodide" } });
python.FS.mkdirTree("/site");
python.FS.mount(python.FS.filesystems.NODEFS, { root: folder }, "/site");
python.globals.set("folder", "/site");
python.runPython(readFileSync(new URL("precompile.py", import.meta.url), "utf8"));
