"""Physical constants and reference states, in SI, each with its source."""

# Exact by definition of the SI (2019): CODATA 2018 / SI brochure, 9th edition.
GAS_CONSTANT_J_MOLK = 8.31446261815324
STEFAN_BOLTZMANN_W_M2K4 = 5.670374419e-8

# Standard gravity, exact by the 3rd CGPM (1901).
GRAVITY_M_S2 = 9.80665

ATM_PA = 101325.0  # the standard atmosphere, exact: 10th CGPM (1954)

# Reference state of every volume flow of gas, air and mixture: ISO 13443 metering state, 15 degC and 101 325 Pa.
STANDARD_TEMP_K = 288.15
STANDARD_PRESSURE_PA = ATM_PA

# Reference temperature of combustion (heating values): 25 degC, ISO 6976 combustion reference.
COMBUSTION_TEMP_K = 298.15

# Dry air as burned here: 20.95 % oxygen, the rest (argon included) counted as nitrogen. US Standard Atmosphere 1976
# gives 20.9476 % O2; the trade rounds to 20.95. Molar mass of real dry air from the same source, for its density.
AIR_OXYGEN_FRACTION = 0.2095
AIR_MOLAR_MASS_KG_MOL = 0.0289644

# Exact: international yard and pound, 1959 (NIST SP 811).
INCH_M, FOOT_M = 0.0254, 0.3048
MILE_HOUR_M_S = 5280 * FOOT_M / 3600
POUND_KG = 0.45359237

# What limits of the trade are named in: pound-force per square inch, and inch of water at 4 degC (NIST SP 811).
PSI_PA = 6894.757293168
INH2O_PA = 249.08891
