"""The steel to buy for the batch: bars in whole lengths and what is cut from each, and nipples for the inlets."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..making import body as making
from ..making.body import CutPlan, Piece
from ..making.legs import thread_m
from ..making.mounting import angle_m2
from ..making.stock import (
    NOISE_M,
    STEEL_DENSITY_KG_M3,
    pipe_section_m2,
    tube_inside_radius_m,
    tube_section_m2,
)
from .body import Body
from .mounting import Mounting
from .steel import Steel, bought_as


@dataclass(frozen=True)
class Bars:
    """Bars of one section: what they are asked for as, the mass of a metre, and which to buy. `key`: of their cost."""

    key: str
    bought_as: Said
    kg_m: float
    plan: CutPlan


@dataclass(frozen=True)
class Stock:
    bars: tuple[Bars, ...]
    bought_m: float
    offcut_m: float
    nipples: Said


def stock(
    body: Body,
    steel: Steel,
    mounting: Mounting,
    stock_lengths: tuple[float, ...],
    nipple_stock: tuple[tuple[float, float], ...],
    inlet: str,
    kerf: float,
    batch_size: int,
    sizes: str,
) -> Stock:
    found = bars(batch_size, body, steel, mounting.flats, stock_lengths, kerf, sizes)
    nipple = making.nipple_choice(
        needed_m=steel.inlet_piece.length_m,
        offers=nipple_stock,
        kerf_m=kerf,
        inlets=batch_size * steel.inlet_piece.count,
        thread_m=thread_m(inlet),
    )
    return Stock(
        bars=found,
        bought_m=sum(one.plan.bought_m for one in found),
        offcut_m=sum(one.plan.offcut_m for one in found),
        nipples=said(nipple.way, count=nipple.count, stock=nipple.stock_m),
    )


def bars(
    batch_size: int,
    body: Body,
    steel: Steel,
    flats: tuple[Piece, ...],
    stock_lengths: tuple[float, ...],
    kerf: float,
    sizes: str,
) -> tuple[Bars, ...]:
    """All bars to buy for a batch of so many, the angle last; nipples and the baffle's sheet apart."""
    sections: dict[tuple, list[Piece]] = {}
    for piece in (*steel.body.pieces, *flats, steel.angle):
        sections.setdefault(_section(bought_as(piece, body, sizes)), []).append(piece)
    return tuple(
        Bars(
            key="angle" if pieces[0] is steel.angle else f"steel_{number}",
            bought_as=bought_as(pieces[0], body, sizes),
            kg_m=_section_m2(bought_as(pieces[0], body, sizes), body, sizes) * STEEL_DENSITY_KG_M3,
            plan=making.cut_plan(
                pieces=[(piece.name, piece.length_m, piece.count * batch_size) for piece in pieces],
                stock_lengths_m=stock_lengths,
                kerf_m=kerf,
            ),
        )
        for number, pieces in enumerate(sections.values())
    )


def _section(bought):
    """What pieces of one bar have in common: the stock, its width and its thickness to a nanometre."""
    return bought.case, *(round(size / NOISE_M) for size in bought.slots.values())


def _section_m2(bought, body, sizes):
    if bought.case == "angle":
        return angle_m2(sizes)
    if bought.case == "tube":
        radius = tube_inside_radius_m(body.wall_m)
        return tube_section_m2(width_m=body.width_m, depth_m=body.depth_m, wall_m=body.wall_m, inside_radius_m=radius)
    if bought.case == "pipe":
        return pipe_section_m2(outside_m=body.width_m, wall_m=body.wall_m)
    return bought.slots["width"] * bought.slots["thickness"]
