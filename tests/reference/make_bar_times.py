"""Write bar_times.csv: round steel bars heating as lumps, by the formulas of EN 1993-1-2 and scipy.

.venv/bin/python tests/reference/make_bar_times.py
"""

from pathlib import Path

from scipy.integrate import solve_ivp

SIGMA, DENSITY = 5.670374419e-8, 7850.0
CASES = (
    # diameter m, start, end, chamber degC, emissivity, view, film
    (0.0254, 20.0, 1149.0, 1232.0, 0.8, 1.0, 80.0),
    (0.0254, 20.0, 1149.0, 1232.0, 0.8, 0.55, 20.0),
    (0.0127, 20.0, 900.0, 950.0, 0.8, 0.75, 40.0),
    (0.050, 20.0, 1200.0, 1300.0, 0.8, 0.75, 40.0),
)


def heat_capacity(temp_C):
    """EN 1993-1-2, 3.4.1.2 [J/kgK]."""
    t = temp_C
    if t < 600:
        return 425 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    if t < 735:
        return 666 + 13002 / (738 - t)
    if t < 900:
        return 545 + 17820 / (t - 731)
    return 650.0


def main():
    lines = []
    for diameter, start, end, chamber, emissivity, view, film in CASES:

        def slope(_, temps):
            (t,) = temps
            flux = emissivity * view * SIGMA * ((chamber + 273.15) ** 4 - (t + 273.15) ** 4) + film * (chamber - t)
            return [4 * flux / (DENSITY * diameter * heat_capacity(t))]

        def there(_, temps):
            return temps[0] - end

        there.terminal = True
        found = solve_ivp(slope, (0, 1e5), [start], events=there, rtol=1e-9, atol=1e-9, max_step=1.0)
        lines.append(f"{diameter},{start},{end},{chamber},{emissivity},{view},{film},{found.t_events[0][0]:.2f}")
    Path(__file__).with_name("bar_times.csv").write_text(
        "# quantity:  time for a round bar of carbon steel to heat as a lump in a chamber of one temperature\n"
        "# reference: heat capacity of EN 1993-1-2, 3.4.1.2 (650 J/kgK above 900 degC), 7850 kg/m3\n"
        "# source:    ordinary differential equation solved with scipy by make_bar_times.py\n"
        "diameter_m,start_C,end_C,chamber_C,emissivity,view,film_W_m2K,time_s\n" + "\n".join(lines) + "\n",
        encoding="utf-8",
    )


if __name__ == "__main__":
    main()
