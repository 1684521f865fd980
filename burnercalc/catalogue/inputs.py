"""What goes into answers of more than one room."""

# The hot block, at any rate and at low fire.
HOT_HIGH = (
    "chamber_temperature",
    "refractory",
    "castable_density",
    "window_area",
    "port_area",
    "port_count",
    "port_diameter",
    "block_thickness",
    "grip",
    "setback",
    "wall",
    "body_kind",
    "body_length",
    "body_width",
    "body_depth",
    "mixture_velocity_in_port",
    "fuel",
    "fuel_blend",
    "equivalence_ratio",
    "ambient_temperature",
    "altitude",
)
HOT_LOW = (*HOT_HIGH, "low_fire")
