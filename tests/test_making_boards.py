"""Boards and sheets for the moulds of a batch: by hand, and no piece on another or off its sheet."""

import random
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from burnercalc.errors import InputError
from burnercalc.making.boards import boards_to_buy
from burnercalc.making.body import Piece

FT, IN = 0.3048, 0.0254


def piece(name, stock, length_in, width_in, count):
    return Piece(name, stock, length_in * IN, width_in * IN, 0.019, count, 1.0)


def test_two_moulds_from_a_sheet_by_hand():
    """Bases 12 x 8, sides 11 x 3, ends 4 x 3 in, twice, kerf 1/8, on 48 x 24: a strip of 8 in with both bases, 24 1/4
    with their cuts, and two sides behind them; a strip of 3 in with the other two, 22 1/4, and the four ends."""
    pieces = [piece("base", "ply 3/4", 12, 8, 1), piece("side", "ply 3/4", 11, 3, 2), piece("end", "ply 3/4", 4, 3, 2)]
    (sheet,) = boards_to_buy(pieces=pieces, moulds=2, kerf_m=0.125 * IN)
    assert (sheet.length_m, sheet.width_m) == pytest.approx((4 * FT, 2 * FT))
    assert [cut.name for cut in sheet.cuts] == ["base"] * 2 + ["side"] * 4 + ["end"] * 4
    xs = [0, 12.125, 24.25, 35.375, 0, 11.125, 22.25, 26.375, 30.5, 34.625]
    assert [cut.x_m / IN for cut in sheet.cuts] == pytest.approx(xs)
    assert [cut.y_m / IN for cut in sheet.cuts] == pytest.approx([0] * 4 + [8.125] * 6)
    assert sheet.left_over == pytest.approx(1 - (2 * 96 + 4 * 33 + 4 * 12) / (48 * 24))


def test_dressed_boards_by_length():
    """Two sides of 30 and two ends of 20 in: 100 in and four cuts do not go on 8 ft, but on 12 ft."""
    pieces = [piece("side", "2x4", 30, 3.5, 2), piece("end", "2x4", 20, 3.5, 2)]
    (bought,) = boards_to_buy(pieces=pieces, moulds=1, kerf_m=0.125 * IN)
    assert bought.length_m == pytest.approx(12 * FT) and [round(cut.x_m / IN, 3) for cut in bought.cuts] == [
        0, 30.125, 60.25, 80.375,
    ]  # fmt: skip


def test_the_larger_sheet_where_a_piece_needs_it():
    (sheet,) = boards_to_buy(pieces=[piece("base", "ply 3/4", 60, 10, 1)], moulds=1, kerf_m=0.0)
    assert sheet.length_m == pytest.approx(8 * FT)
    assert boards_to_buy(pieces=[piece("base", "ply 3/4", 97, 10, 1)], moulds=1, kerf_m=0.0) is None
    assert boards_to_buy(pieces=[piece("side", "2x4", 145, 3.5, 2)], moulds=1, kerf_m=0.0) is None


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.tuples(st.floats(2, 46), st.floats(1, 23), st.integers(1, 3)), min_size=1, max_size=4),
    st.integers(1, 6),
    st.sampled_from([0.0, 0.003]),
)
def test_no_piece_lies_on_another_or_off_its_sheet(sizes, moulds, kerf):
    pieces = [piece(str(i), "ply 1/2", *size) for i, size in enumerate(sizes)]
    bought = boards_to_buy(pieces=pieces, moulds=moulds, kerf_m=kerf)
    assert sum(len(one.cuts) for one in bought) == moulds * sum(count for *_, count in sizes)
    for sheet in bought:
        for cut in sheet.cuts:
            assert cut.x_m + cut.length_m <= sheet.length_m + 1e-9 and cut.y_m + cut.width_m <= sheet.width_m + 1e-9
        for a, b in combinations(sheet.cuts, 2):
            beside = max(b.x_m - a.x_m - a.length_m, a.x_m - b.x_m - b.length_m)
            across = max(b.y_m - a.y_m - a.width_m, a.y_m - b.y_m - b.width_m)
            assert max(beside, across) >= kerf - 1e-9


@pytest.mark.parametrize("change, field", [({"moulds": 0}, "moulds"), ({"kerf_m": -1.0}, "kerf")])
def test_names_the_field(change, field):
    with pytest.raises(InputError) as caught:
        boards_to_buy(**{"pieces": [piece("base", "ply 3/4", 9, 9, 1)], "moulds": 1, "kerf_m": 0.0, **change})
    assert caught.value.field == field


ROUND = [piece("mould layer", "ply 3/4", 9.125, 9.1875, 5), piece("base board", "ply 3/4", 11.125, 11.125, 1)]


def _small_sheets(bought):
    return round(sum(one.length_m * one.width_m for one in bought) / (4 * FT * 2 * FT), 9)


def test_twelve_round_moulds_lie_in_halves_where_that_is_less():
    """Sixty layers of 9 1/8 by 9 3/16 in and twelve bases of 11 1/8 in: 5.7 small sheets by their area alone, so six at
    least; on 48 x 24 lie ten layers or eight bases, whole ones by themselves are 6 and 2."""
    bought = boards_to_buy(pieces=ROUND, moulds=12, kerf_m=IN / 16)
    area = 12 * (5 * 9.125 * 9.1875 + 11.125**2) / (48 * 24)
    assert 5.6 < area < 6 and _small_sheets(bought) <= 7
    halves = sum(cut.name == "half layer" for one in bought for cut in one.cuts)
    whole = sum(cut.name == "mould layer" for one in bought for cut in one.cuts)
    assert halves / 2 + whole == 60 and sum(cut.name == "base board" for one in bought for cut in one.cuts) == 12


def _fits(sizes, length, width, kerf, placed=()):
    """Whether so few pieces go on one sheet, all orders, both ways round, each at a corner of those before: exact."""
    if not sizes:
        return True
    xs = {0.0, *(x + a + kerf for x, _, a, _ in placed)}
    ys = {0.0, *(y + b + kerf for _, y, _, b in placed)}
    for i, (long, wide) in enumerate(sizes):
        if (long, wide) in sizes[:i]:
            continue
        for (a, b), x, y in product({(long, wide), (wide, long)}, xs, ys):
            if x + a > length + 1e-9 or y + b > width + 1e-9:
                continue
            beside = (
                x + a + kerf <= u + 1e-9
                or u + c + kerf <= x + 1e-9
                or y + b + kerf <= v + 1e-9
                or v + d + kerf <= y + 1e-9
                for u, v, c, d in placed
            )
            if all(beside) and _fits(sizes[:i] + sizes[i + 1 :], length, width, kerf, (*placed, (x, y, a, b))):
                return True
    return False


@pytest.mark.parametrize("seed", range(40))
def test_few_pieces_go_on_one_small_sheet_where_any_layout_does(seed):
    """All places of four pieces: where one sheet can take them one is bought, and more where none can."""
    dice = random.Random(seed)
    sizes = [(dice.uniform(8, 30), dice.uniform(6, 20)) for _ in range(4)]
    pieces = [piece(str(i), "ply 1/2", max(s), min(s), 1) for i, s in enumerate(sizes)]
    one = _small_sheets(boards_to_buy(pieces=pieces, moulds=1, kerf_m=IN / 8)) == pytest.approx(1)
    assert one == _fits(tuple((max(s), min(s)) for s in sizes), 48.0, 24.0, 0.125)


@pytest.mark.parametrize("side_in, on_one", [(7.9, 18), (9.5, 10), (11.9, 8), (15.9, 3), (23.9, 2)])
@pytest.mark.parametrize("count", [3, 8, 11])
def test_squares_lie_as_many_on_a_sheet_as_there_is_room_for(side_in, on_one, count):
    """Squares in rows and columns are the most on a sheet that is not two wider than they: so many sheets, no more."""
    bought = boards_to_buy(pieces=[piece("p", "ply 1/2", side_in, side_in, count)], moulds=1, kerf_m=0.0)
    assert _small_sheets(bought) == pytest.approx(-(-count // on_one))


def test_many_moulds_buy_no_more_than_in_two_lots():
    for moulds in (14, 20, 31, 64):
        half = moulds // 2
        lots = [
            _small_sheets(boards_to_buy(pieces=ROUND, moulds=n, kerf_m=IN / 16)) for n in (half, moulds - half, moulds)
        ]
        assert lots[2] <= lots[0] + lots[1] + 1
