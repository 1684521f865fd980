"""Random drawings for the tests of the writers: a plate with holes, a window and a curved cut."""

from hypothesis import strategies as st

from burnercalc.drawing.shapes import Arc, Circle, Drawing, Line, Text, rounded_rectangle

_place = st.floats(-200, 200)
_circle = st.builds(Circle, _place, _place, st.floats(0.5, 60), st.just("port"))
_line = st.builds(Line, _place, _place, _place, _place, st.just("body"))
_arc = st.builds(Arc, _place, _place, st.floats(1, 60), st.floats(-180, 180), st.floats(190, 500), st.just("bend"))
_window = st.builds(
    lambda x, y, a, b, share: rounded_rectangle(x, y, a, b, share * min(a, b) / 2, "window"),
    _place,
    _place,
    st.floats(5, 300),
    st.floats(5, 300),
    st.floats(0.1, 1),
)
_text = st.builds(
    Text,
    _place,
    _place,
    st.sampled_from(["5/16", "2 \u00bd in", "<a & b>", "300 \u00b0F", "\u03bb"]),
    st.floats(2, 8),
    st.sampled_from(["start", "middle", "end"]),
    st.sampled_from([0.0, 90.0, 30.0]),
)

drawings = st.builds(
    lambda circles, others: Drawing("plate", "Plate <1> & more", tuple(circles + others)),
    st.lists(_circle, min_size=1, max_size=6),
    st.lists(st.one_of(_line, _arc, _window, _text), max_size=4),
)
