"""What is bought for a batch of any size: bars and nipples as they are cut, all else in packs."""

from dataclasses import dataclass

from ..catalogue.sentences import said
from ..making import body as making
from ..making import money
from ..making.legs import thread_m
from ..making.money import CostLine, Item
from ..making.stock import plate_mass_kg
from .baffle_sheet import BaffleSheet
from .block import Block
from .blower import Blower
from .body import Body
from .calendar import Calendar
from .first_fire import FirstFire
from .mounting import Mounting
from .pins import Pins
from .steel import Steel
from .stock import bars
from .train import Train


@dataclass(frozen=True)
class Purchases:
    """`items` are what is bought besides bars and nipples, whatever the size of the batch; the gas of the first fire
    too, which a bought burner does not need.
    """

    items: tuple[Item, ...]
    calendar: Calendar
    body: Body
    steel: Steel
    mounting: Mounting
    inlet: str
    stock_lengths: tuple[float, ...]
    nipple_stock: tuple[tuple[float, float], ...]
    kerf: float
    price_steel: float
    sizes: str

    def of(self, burners: int) -> tuple[CostLine, ...]:
        """Everything bought for so many, with the moulds that their calendar makes."""
        moulds = self.calendar.moulds_for(burners)
        items = tuple(item._replace(need=moulds) if item.key == "mould" else item for item in self.items)
        steel = (
            money.bar_line(
                key=one.key,
                name=one.bought_as,
                plan=one.plan,
                price_per_m=self.price_steel * one.kg_m,
                batch_size=burners,
            )
            for one in bars(
                burners, self.body, self.steel, self.mounting.flats, self.stock_lengths, self.kerf, self.sizes
            )
        )
        return (*steel, self._nipples(burners), *money.cost_lines(items=items, batch_size=burners))

    def _nipples(self, burners: int) -> CostLine:
        piece = self.steel.inlet_piece
        chosen = making.nipple_choice(
            needed_m=piece.length_m,
            offers=self.nipple_stock,
            kerf_m=self.kerf,
            inlets=burners * piece.count,
            thread_m=thread_m(self.inlet),
        )
        return CostLine(
            key="nipple",
            name=said("nipple", pipe=self.inlet),
            need=piece.count / chosen.pieces_each,
            unit="nipple",
            packs=chosen.count,
            used_cost=chosen.cost / chosen.count / chosen.pieces_each * piece.count,
            batch_cost=chosen.cost,
        )


def purchases(
    body: Body,
    steel: Steel,
    mounting: Mounting,
    baffle_sheet: BaffleSheet,
    block: Block,
    pins: Pins,
    train: Train,
    blower: Blower,
    first_fire: FirstFire,
    calendar: Calendar,
    inlet: str,
    baffle_thickness: float,
    stock_lengths: tuple[float, ...],
    nipple_stock: tuple[tuple[float, float], ...],
    kerf: float,
    bag_mass: float,
    price_steel: float,
    price_bag: float,
    price_pins: float,
    price_mould: float,
    price_train: float | str,
    price_blower: float,
    price_sundries: float,
    sizes: str,
) -> Purchases:
    items = (
        Item("bag", said("bag"), block.dry_kg.value, "kg", bag_mass, price_bag),
        Item("pins", said("pins"), pins.wanted, "pins", max(1, pins.per_stick), price_pins),
        Item("mould", said("mould"), 1, "batch", 1, price_mould, once=True),
        *_train(train, price_train),
        Item("blower", said("blower"), 1, "set", blower.burners, price_blower),
        Item("sundries", said("sundries"), 1, "set", 1, price_sundries),
    )
    if kg := first_fire.fuel_kg:
        items = (*items, Item("first_fire", said("first_fire"), kg, "kg", kg, first_fire.fuel_cost))
    if baffle_sheet.sheet:
        blank_m2 = baffle_sheet.blank_length_m * baffle_sheet.blank_width_m
        blank_kg = plate_mass_kg(area_m2=blank_m2, thickness_m=baffle_thickness)
        items = (Item("baffle", said("baffle"), 1, "blank", 1, blank_kg * price_steel), *items)
    return Purchases(
        items, calendar, body, steel, mounting, inlet, stock_lengths, nipple_stock, kerf, price_steel, sizes
    )


def _train(train, price_train):
    """The train at a sum of one's own, or its list: safety, what the burner needs, comfort."""
    if price_train != "listed":
        return (Item("train", said("train"), 1, "set", 1, price_train),)
    return tuple(
        Item(key, said(key), 1, "set", 1, price)
        for key, price in (
            ("train_safety", train.safety_cost),
            ("train_needed", train.needed_cost),
            ("train_comfort", train.comfort_cost),
        )
    )
