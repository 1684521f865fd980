// Runs bench_parts.py in the Pyodide of a built site:  node bench_parts.mjs DIST
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const folder = resolve(process.argv[2], "pyodide");
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`));
const python = await loadPyodide({ packageBaseUrl: `${folder}/`, env: { HOME: "/home/pyodide" } });
await python.loadPackage("burnercalc", { messageCallback: () => {} });
python.runPython(readFileSync(new URL("bench_parts.py", import.meta.url), "utf8"));
