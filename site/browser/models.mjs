// Bokeh's models in the page: put there when they are needed, found by name, given new columns and the theme's colours.
import { waitFor } from "./bars.mjs";
import { rest } from "./page.mjs";

const models = new Map();
let loading = null;

// Classic scripts, because browsers parse these off the page's thread; run in this order, the last one sets loadBokeh.
const SCRIPTS = ["vendor/bokeh/1.js", "vendor/bokeh/2.js", "vendor/bokeh/3.js", "vendor/bokeh/4.js"];

async function load() {
  const arrived = waitFor("bokeh", "the fields and drawings", ["Try again", () => location.reload()]);
  await Promise.all(SCRIPTS.map((url) => new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = `./${url}`;
    script.async = false;
    script.onload = resolve;
    script.onerror = () => reject(new Error(`${url} did not load`));
    document.head.append(script);
  }))).finally(arrived);
  return self.loadBokeh(rest);
}

// Show a document of page.bin, in steps; its model. `prepare` is called with nothing on the screen yet.
export async function embed({ doc, place }, prepare = () => {}) {
  const { Document, ViewManager } = await (loading ??= load());
  await rest();
  const document_ = Document.from_json(doc);
  const [model] = document_.roots();
  for (const part of model.references()) if (part.name) models.set(part.name, part);
  await rest();
  prepare(model);
  document_.views_manager = new ViewManager();
  const view = await document_.views_manager.build_view(model);
  const at = document.getElementById(place);
  await rest();
  at.replaceChildren();
  view.render_to(at);
  view.r_after_render();
  await rest();
  return model;
}

const placed = new Set(), latest = new Map(); // names of the figures that have their views; the data to show in each
const figures = new Map(); // promises of the figures that are in the page, by name

// Put a figure into the page, with these data or those that it was built with.
export function embedFigure(name, page, data) {
  if (!figures.has(name)) figures.set(name, makeFigure(name, page, data));
  return figures.get(name);
}

async function makeFigure(name, page, data) {
  await embed(page, () => {
    theme();
    if (models.has(`${name}-texts`)) keepSizes(name);
    if (data) draw(name, data);
  });
  placed.add(name);
  if (latest.has(name)) draw(name, latest.get(name)); // what came while the views were being built
  const place = document.getElementById(`live-${name}`), figure = place.closest("figure");
  figure.dataset.live = "";
  enlarge(name, figure.classList.contains("large"));
  // A picture has nothing to do for the keyboard; Bokeh would make every one a stop.
  place.firstElementChild?.shadowRoot?.querySelector(".bk-Canvas")?.shadowRoot?.querySelector(".bk-events")?.setAttribute("tabindex", "-1");
}

// The place of a drawing on the screen, for Python to lay out its words: [width, height or 0 for any, whether it may lie
// down], in px.
export function placeOf(name) {
  const figure = document.getElementById(`figure-${name}`), large = figure.classList.contains("large");
  const style = getComputedStyle(figure);
  const inner = figure.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
  const width = inner > 0 ? inner : document.getElementById("job").clientWidth - 40; // in a chapter that is not open
  const high = parseFloat(style.getPropertyValue("--high")) || 0; // of the window, in hundredths
  return [Math.round(width), Math.round(large ? innerHeight - parseFloat(style.getPropertyValue("--rest")) : high * innerHeight / 100), large];
}

// New data for the figures that are in the page.
export function showFigures({ drawings, charts = {} }) {
  for (const [name, data] of Object.entries({ ...drawings, ...charts })) {
    latest.set(name, data);
    if (placed.has(name)) draw(name, data); // never while its views are being built: they would show half of each
  }
}

const draw = (name, data) => (data.series ? drawChart(name, data) : drawDrawing(name, data));

export const model = (name) => models.get(name);

const drawn = new Map(); // the columns of each source, as text

function columns(name, data) {
  const source = models.get(name), text = JSON.stringify(data);
  if (!source || drawn.get(source) === text) return;
  drawn.set(source, text);
  source.data = data;
}

const ALIGN = { start: "left", middle: "center", end: "right" };

let steady = false;
export function keepView(on) { // while a line of the face is dragged, the picture must not be fitted anew under the finger
  steady = on;
}

function drawDrawing(name, drawing) {
  // Ranges and text size before the columns: Bokeh reads old columns with a new style, but not the reverse.
  const [x1, y1, x2, y2] = drawing.bounds;
  const aspect = (x2 - x1) / (y2 - y1);
  if (!steady || name !== "face") {
    models.get(`${name}-x`).setv({ start: x1, end: x2 });
    models.get(`${name}-y`).setv({ start: y1, end: y2 });
    models.get(`figure-${name}`).aspect_ratio = aspect;
    document.getElementById(`figure-${name}`).style.setProperty("--aspect", aspect);
  }
  const { anchor, ...texts } = drawing.texts;
  sizeTexts(name, texts.height);
  columns(`${name}-areas`, drawing.areas);
  columns(`${name}-lines`, drawing.lines);
  columns(`${name}-circles`, drawing.circles);
  columns(`${name}-texts`, { ...texts, align: anchor.map((each) => ALIGN[each]) });
  hearing.get(name)?.(drawing);
}

const LEAST_TEXT_PX = 10.5; // what can still be read in the small drawing of a phone

// The texts of a drawing are of one height in mm; as a size on the screen (capitals are 0.718 of a font's size).
function sizeTexts(name, heights) {
  const figure = models.get(`figure-${name}`), x = models.get(`${name}-x`), glyph = models.get(`glyph-${name}`);
  const width = figure.properties.inner_width;
  const scale = ((width.is_unset ? 0 : width.get_value()) || 300) / (x.end - x.start);
  const size = `${Math.max(LEAST_TEXT_PX, Math.max(0, ...heights) / 0.718 * scale).toFixed(1)}px`;
  if (heights.length && glyph.text_font_size.value !== size) glyph.text_font_size = { value: size };
}

function keepSizes(name) {
  const again = () => sizeTexts(name, models.get(`${name}-texts`).data.height);
  models.get(`figure-${name}`).properties.inner_width.change.connect(again);
  models.get(`${name}-x`).properties.end.change.connect(again);
}

// A label of an axis that is longer than the axis, in two lines broken at the space nearest to its middle.
function folded(label, most) {
  if (label.length <= most) return label;
  const breaks = [...label.matchAll(/ (?!\[)/g)].map(({ index }) => index);
  const at = breaks.sort((a, b) => Math.abs(2 * a - label.length) - Math.abs(2 * b - label.length))[0];
  return at === undefined ? label : `${label.slice(0, at)}\n${label.slice(at + 1)}`;
}

function drawChart(name, chart) {
  models.get(`${name}-x`).setv({ start: chart.x_range[0], end: chart.x_range[1] });
  models.get(`${name}-y`).setv({ start: chart.y_range[0], end: chart.y_range[1] });
  models.get(`${name}-xaxis`).axis_label = folded(chart.x_label, 36);
  models.get(`${name}-yaxis`).axis_label = folded(chart.y_label, 16);
  if (chart.x_ticks.length) {
    models.get(`${name}-xaxis`).ticker.ticks = chart.x_ticks.map(([place]) => place);
    models.get(`${name}-xaxis`).major_label_overrides = new Map(chart.x_ticks);
  }
  for (const [key, series] of Object.entries(chart.series)) {
    const data = { x: series.x, y: series.y };
    if (series.kind === "band") data.y2 = series.y2;
    if (series.kind === "bars" || series.kind === "points") data.verdict = series.x.map(() => series.verdict);
    columns(`${name}-${key}`, data);
  }
  columns(`${name}-mark`, chart.mark);
}

const AIR_PX = 40; // round drawing and caption of an enlarged figure
const PORT_PX = 40; // and what is said of a port
const CHART_PX = 230, CHART_REST_PX = 180; // height of a chart as built; title, caption and air of an enlarged one

// An enlarged figure fills the window and takes the fingers: pan, pinch and wheel act on it until it is closed.
export function enlarge(name, on) {
  const figure = document.getElementById(`figure-${name}`);
  if (on) figure.style.setProperty("--rest", `${figure.querySelector("figcaption").offsetHeight + AIR_PX + (name === "face" ? PORT_PX : 0)}px`);
  for (const tool of ["pan", "wheel"]) models.get(`${tool}-${name}`)?.setv({ active: on });
  if (models.has(`${name}-xaxis`)) models.get(`figure-${name}`).height = on ? Math.max(CHART_PX, Math.min(0.6 * innerWidth, innerHeight - CHART_REST_PX)) : CHART_PX;
  models.get(`numbers-${name}`)?.setv({ visible: on });
}

const hearing = new Map();
export function onDrawn(name, hear) { // a drawing has its new columns
  hearing.set(name, hear);
}

// Colours by purpose, from the style sheet, so that light, dark and high contrast are decided in one place.
const LINE = { refractory: "--faint", steel: "--soft", mould: "--faint", setback: "--warm", window: "--ink", body: "--ink", port: "--ink", hole: "--soft", wood: "--soft", flame: "--flame",
  hidden: "--faint", centre: "--faint", dimension: "--soft", text: "--ink", number: "--soft", heading: "--ink" };
const FILL = { body: "--steel", window: "--castable", refractory: "--castable", steel: "--steel", port: "--hole", hole: "--hole", wood: "--wood", flame: "--flame", tint: "--castable", solid: "--ink" };

export function theme() {
  const style = getComputedStyle(document.documentElement);
  const colour = (name) => style.getPropertyValue(name).trim() || "#888888";
  for (const [name, part] of models) {
    if (name.startsWith("colours-")) {
      const fill = name.endsWith("-fill");
      part.palette = part.factors.map((factor) => name.endsWith("-flow") ? colour(`--flow-${factor}`) : ["good", "caution", "stop"].includes(factor) ? colour(`--${factor}`) :
        factor === "" ? colour("--line") : colour((fill ? FILL : LINE)[factor] ?? (fill ? "--paper" : "--soft")));
    }
    const kind = name.match(/^(fill|line|mark)-(good|caution|stop|plain\d?)?/);
    if (kind?.[1] === "fill") part.fill_color = colour(kind[2] === "plain" ? "--line" : `--${kind[2]}`);
    if (kind?.[1] === "line") part.line_color = colour(`--${kind[2].replace("plain", "line")}`);
    if (kind?.[1] === "mark") part.setv({ fill_color: colour("--accent"), line_color: colour("--paper") });
    if (name === "done-face") part.line_color = colour("--ink");
    if (name.endsWith("-ygrid")) part.setv({ grid_line_color: colour("--edge"), grid_line_alpha: 0.6 });
    if (name.startsWith("legend-")) part.label_text_color = colour("--ink");
    if (name.endsWith("axis")) {
      part.setv({ axis_label_text_color: colour("--ink"), major_label_text_color: colour("--ink"), axis_line_color: colour("--soft"),
        major_tick_line_color: colour("--soft"), minor_tick_line_color: null, axis_label_text_font_style: "normal",
        axis_label_text_font_size: "13px", major_label_text_font_size: "13px" });
    }
  }
}
