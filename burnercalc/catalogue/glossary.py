"""Words of the trade and what they mean, for a reader who has not met them; the page explains them where they stand."""

import re
from collections.abc import Iterator
from functools import cache

# word: (its other forms, what it means). The forms are matched whole, in any case; of two the longer one.
GLOSSARY: dict[str, tuple[tuple[str, ...], str]] = {
    "air switch": (("air-proving switch",), "A switch that lets gas flow only while the blower gives air."),
    "alumina": ((), "Aluminium oxide. The more of it a refractory holds, the hotter it may get."),
    "aspirated": ((), "Draws its air with the jet of gas, without a blower."),
    "available heat": ((), "What stays in the chamber of the heat of the gas; the rest leaves with the smoke."),
    "back pressure": ((), "Pressure in the chamber that the mixture must push against on its way out of the ports."),
    "baffle": (
        ("baffles",),
        "A plate with holes inside the box. It breaks the stream from the inlet, so that all ports get alike.",
    ),
    "bevel": (("bevelled",), "A slope cut on an edge, so that the weld reaches deep."),
    "block": (("blocks",), "The cast refractory of the burner, with the ports through it."),
    "bore": (("bores",), "Inside diameter of a pipe or hose."),
    "burning velocity": ((), "How fast a flame moves into still mixture. Hot mixture burns much faster."),
    "cap": (("caps", "end cap", "end caps"), "The piece of flat steel that closes an end of the box."),
    "castable": (("castables",), "Refractory that is mixed with water and cast like concrete."),
    "charge": (
        ("full charge",),
        "Of a cylinder: the gas it holds when it has been filled. Of a furnace: what is melted.",
    ),
    "check valve": (("check valves",), "A valve that lets gas flow one way only."),
    "cock": (("cocks",), "A valve that a quarter of a turn opens or shuts."),
    "concentric": ((), "With one middle for the inside and the outside."),
    "cross-bar": (
        ("cross-bars", "cross bar"),
        "A bar across the box that rests on the mould's frame. It keeps the grip.",
    ),
    "cross-lighting": ((), "A burning port lights the next one."),
    "cure": (("curing", "cured"), "To keep wet castable damp while it hardens."),
    "damper": (("dampers",), "A slide or flap that lets more or less air through."),
    "dew point": ((), "The temperature below which water drips out of a gas."),
    "DN": ((), "Metric name of a pipe size. DN 40 is 1-1/2 in pipe; it is not the true diameter."),
    "drip leg": (("sediment trap",), "A short pipe down from the gas line that catches dirt and water."),
    "edge margin": ((), "From the outer ports to the edge of the window."),
    "equivalence ratio": ((), "The mixture as a number. 1 is just enough gas for the air, 1.1 is 10 % too much."),
    "excess air": ((), "Air beyond what just burns the gas."),
    "face": (("faces",), "The side of the burner that looks at the fire."),
    "firing rate": (("firing rates",), "How much heat the gas gives each hour."),
    "flare": ((), "A pipe end that widens like a trumpet."),
    "flashback": (
        ("flashes back", "flash back"),
        "The flame runs back through the ports into the box. It bangs or roars, and the box burns.",
    ),
    "flue": (("flue gas", "flues"), "The way out of the chamber for the burnt gas; flue gas is that gas."),
    "flush": ((), "Level with what is beside it."),
    "galvanised": ((), "Coated with zinc. Hot, it gives off a smoke that makes you ill."),
    "gas train": (("air train", "train"), "All valves, gauges and pipes between the gas and the burner."),
    "gauge pressure": (("gauge",), "A gauge shows pressure above that of the air around it."),
    "grip": (("grips",), "How deep the steel box sits in the refractory."),
    "gross": ((), "Heat of the gas as it is sold, with the heat that its steam would give if it turned to water."),
    "hood": (("hoods",), "A roof over the fire that leads smoke outdoors."),
    "high fire": ((), "The most that the burner is set to burn."),
    "inlet": (("inlets",), "The pipe that brings the mixture into the box."),
    "jet": (
        ("jets", "gas jet"),
        "The small drilled hole that meters the gas. The inlet's jet is the stream out of the pipe.",
    ),
    "kerf": ((), "The width that a saw or a laser turns to waste."),
    "knock-out drill": (("knock-out hole", "knock-out holes"), "A thin hole under each pin, to punch the pin out."),
    "lean": (
        ("leaner",),
        "Of a mixture: with less gas than the air could burn. Of a pin: how far it stands off square.",
    ),
    "lift": (
        ("lifts", "lifts off", "lifted", "lifting"),
        "Of a flame: it leaves the ports because the mixture comes too fast, and may go out.",
    ),
    "lining": (("linings",), "The layers of brick, castable or blanket inside the chamber."),
    "lip": (
        ("lips", "setback"),
        "The rim of steel round the window that the refractory grips, from the outside of the box to the window.",
    ),
    "low fire": ((), "The least that the burner is turned down to."),
    "malleable": ((), "Of pipe fittings: a cast iron that does not crack when it is hit."),
    "manometer": (("manometers",), "A tube of water that shows small pressures."),
    "mix pipe": ((), "The pipe in which gas and air mix, from the jet to the box."),
    "mixture": ((), "Gas and air together; as a number, 1 is just enough gas for the air."),
    "mould": (("moulds",), "The wooden frame that the block is cast in."),
    "needle valve": ((), "A valve that sets a small flow finely."),
    "net": ((), "Heat of the gas without what its steam would give if it turned to water."),
    "neutral": ((), "Neither gas nor air is left over."),
    "nipple": (("nipples",), "A short piece of pipe with a thread on both ends."),
    "nominal": ((), "The name of a size; the true measure differs a little."),
    "overhead": ((), "What a shop costs whether or not it works: rent, power, tools, insurance."),
    "oxidising": ((), "With oxygen left over. Hot steel scales fast in it."),
    "pilot": (("pilots",), "A small flame that lights the burner and stays lit."),
    "pitch": ((), "From the middle of one hole to the middle of the next."),
    "plastic refractory": (
        ("phosphate-bonded plastic", "rammed plastic", "a plastic"),
        "Refractory like stiff clay that is rammed in, not poured; heat makes it hard.",
    ),
    "plenum": (("plenums",), "The room in the box behind the ports. Its pressure should be the same all along."),
    "port": (("ports",), "One of the many small holes that the mixture burns at."),
    "port loading": ((), "How much heat the gas gives for each square inch or square millimetre of port."),
    "ppm": ((), "Parts in a million: 10,000 ppm are 1 %."),
    "premixed": (("premix", "premixed gas"), "Gas and air are mixed before they reach the fire."),
    "proud": ((), "Standing out above what is beside it."),
    "purge": (("purged", "purging"), "To blow all gas out with air before anything is lit."),
    "quenching": (
        ("quench", "quenches", "quenching diameter"),
        "Cold walls close by put a flame out. In a hole under the quenching diameter it cannot run.",
    ),
    "reducing": ((), "With gas left over, and carbon monoxide with it, which poisons. Steel scales less in it."),
    "refractory": (("refractories",), "Stuff that stands fire: castable, brick, fibre."),
    "regulator": (("regulators",), "The valve that brings the cylinder's pressure down and holds it even."),
    "relief hole": (("relief holes",), "A hole drilled where two cuts meet, so that the corner does not tear."),
    "Reynolds number": ((), "Tells smooth flow from churning flow. In a hole it is smooth below about 2,000."),
    "rich": (("richer",), "Of a mixture: with more gas than the air can burn. It makes carbon monoxide."),
    "schedule": (("schedule 40",), "How thick the wall of a pipe is. Schedule 40 is common steel pipe."),
    "scrap": ((), "Pieces that go wrong and are thrown away."),
    "service limit": ((), "The highest temperature that its maker lets a refractory run at."),
    "shell": ((), "The outside of the forge or furnace."),
    "silica": ((), "Fine stone dust that scars lungs when it is breathed."),
    "slump": (("slumps",), "To sag while still wet."),
    "stripping": (("stripped", "strip after", "strip the mould"), "To take the mould and the pins off the block."),
    "tack": (("tacks", "tacked"), "A short weld that holds pieces in place until they are welded."),
    "throat": ((), "The narrowest part of a pipe in which gas draws its air."),
    "throughput": ((), "How much metal an hour the forge heats."),
    "turndown": (("turned down",), "How many times high fire is as strong as low fire."),
    "union": ((), "A pipe joint that can be taken apart without turning the pipes."),
    "velocity head": (
        ("velocity heads", "stream head"),
        "The pressure that a stream gives when it is stopped, from its speed.",
    ),
    "wall gradient": ((), "How fast the flow rises from a port's wall. It decides whether a flame holds there."),
    "web": (("webs",), "The refractory that is left between two ports."),
    "window": (("windows",), "The opening cut in the steel, in which the ports stand."),
    "Wobbe index": ((), "How much heat a gas brings through one jet at one pressure, as against other gases."),
}


@cache
def _forms() -> dict[str, str]:
    return {form.lower(): word for word, (others, _) in GLOSSARY.items() for form in (word, *others)}


@cache
def _pattern() -> re.Pattern[str]:
    forms = sorted(_forms(), key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(forms)})\b", re.IGNORECASE)  # as the page makes it of the same words


def explained_in(text: str) -> Iterator[str]:
    """The words of the glossary that a text holds, each once, in the order they stand."""
    seen = dict.fromkeys(_forms()[found.lower()] for found in _pattern().findall(text))
    yield from seen
