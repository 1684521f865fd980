"""What is worked out: each part a frozen record and the one function that makes it, both named like their module.

A part's function says in its signature what it may touch: settings by their keys (SI), other parts by their names. So
the order of the work follows from the signatures, and needs no list.
"""

from . import (
    aspirated,
    baffle_plate,
    baffle_sheet,
    body,
    chamber,
    face,
    fire,
    flame,
    gas,
    mixture,
    mould,
    need,
    passage,
    plenum,
    resistance,
    schedule,
    shares,
    shop,
    steel,
    stream,
)

PARTS = {
    "shop": shop.shop,
    "gas": gas.gas,
    "mixture": mixture.mixture,
    "flame": flame.flame,
    "chamber": chamber.chamber,
    "need": need.need,
    "fire": fire.fire,
    "aspirated": aspirated.aspirated,
    "body": body.body,
    "face": face.face,
    "plenum": plenum.plenum,
    "stream": stream.stream,
    "baffle_plate": baffle_plate.baffle_plate,
    "passage": passage.passage,
    "shares": shares.shares,
    "resistance": resistance.resistance,
    "steel": steel.steel,
    "baffle_sheet": baffle_sheet.baffle_sheet,
    "mould": mould.mould,
    "schedule": schedule.schedule,
}
