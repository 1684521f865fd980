"""The steel to buy for the batch: bars in whole lengths and what is cut from each, and nipples for the inlets."""

from dataclasses import dataclass

from ..catalogue.sentences import Said, said
from ..making import body as making
from ..making.body import CutPlan, NippleChoice, Piece
from ..making.stock import (
    NOISE_M,
    STEEL_DENSITY_KG_M3,
    pipe_section_m2,
    tube_inside_radius_m,
    tube_section_m2,
)
from .body import Body
from .steel import Steel, bought_as


@dataclass(frozen=True)
class Bars:
    """Bars of one section: what they are asked for as, the mass of a metre, and which to buy."""

    bought_as: Said
    kg_m: float
    plan: CutPlan


@dataclass(frozen=True)
class Stock:
    bars: tuple[Bars, ...]
    bought_m: float
    offcut_m: float
    nipple: NippleChoice
    nipples: Said


def stock(
    body: Body,
    steel: Steel,
    stock_lengths: tuple[float, ...],
    nipple_stock: tuple[tuple[float, float], ...],
    kerf: float,
    batch_size: int,
) -> Stock:
    found = bars(batch_size, body, steel, stock_lengths, kerf)
    needed_m = steel.inlet_piece.length_m
    nipple = making.nipple_choice(needed_m=needed_m, offers=nipple_stock, kerf_m=kerf, burners=batch_size)
    way = "halves" if nipple.pieces_each == 2 else "cut" if nipple.stock_m > needed_m + NOISE_M else "whole"
    return Stock(
        bars=found,
        bought_m=sum(one.plan.bought_m for one in found),
        offcut_m=sum(one.plan.offcut_m for one in found),
        nipple=nipple,
        nipples=said(way, count=nipple.count, stock=nipple.stock_m),
    )


def bars(batch_size: int, body: Body, steel: Steel, stock_lengths: tuple[float, ...], kerf: float) -> tuple[Bars, ...]:
    """All bars to buy for a batch of so many; nipples and the baffle's sheet apart."""
    sections: dict[tuple, list[Piece]] = {}
    for piece in steel.body.pieces:
        sections.setdefault(_section(piece), []).append(piece)
    return tuple(
        Bars(
            bought_as=bought_as(pieces[0], body),
            kg_m=_section_m2(pieces[0], body) * STEEL_DENSITY_KG_M3,
            plan=making.cut_plan(
                pieces=[(piece.name, piece.length_m, piece.count * batch_size) for piece in pieces],
                stock_lengths_m=stock_lengths,
                kerf_m=kerf,
            ),
        )
        for pieces in sections.values()
    )


def _section(piece):
    """What pieces of one bar have in common, to a nanometre."""
    return piece.stock, round(piece.width_m / NOISE_M), round(piece.thickness_m / NOISE_M)


def _section_m2(piece, body):
    if piece.stock == "tube":
        radius = tube_inside_radius_m(body.wall_m)
        return tube_section_m2(width_m=body.width_m, depth_m=body.depth_m, wall_m=body.wall_m, inside_radius_m=radius)
    if piece.stock == "pipe":
        return pipe_section_m2(outside_m=body.width_m, wall_m=body.wall_m)
    return piece.width_m * piece.thickness_m
