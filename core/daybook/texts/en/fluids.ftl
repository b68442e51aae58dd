# Fluids, what is found by them, and oil families.

fluid-compressor-oil = Compressor oil
fluid-engine-oil = Engine oil
fluid-coolant = Coolant
fluid-hydraulic-oil = Hydraulic oil
fluid-power-steering = Power steering fluid
fluid-brake-fluid = Brake fluid
fluid-gearbox-oil = Gearbox and PTO case oil
fluid-gear-case = Compressor gear case
fluid-def = Exhaust fluid (DEF)
fluid-fuel = Fuel
fluid-water-trap = Fuel water trap
fluid-washer-fluid = Washer fluid
fluid-brake-tanks = Brake air tanks
fluid-receiver-water = Receiver water
fluid-battery-water = Battery water
fluid-tool-oil = Tool oiler oil
fluid-grease = Grease

# Findings
finding-any = topped up
finding-wrong-oil = not this unit's oil
finding-below-view = below view
finding-rising = higher than last time: fuel or coolant in the oil
finding-over-a-quart = over 1 qt between changes: a leak, or burning
finding-hot = runs hot
finding-oily = oily or brown
finding-sprays = a leak sprays
finding-below-mark = below the low mark
finding-noisy = noisy
finding-pto-case-low = PTO case low
finding-in-fuel = exhaust fluid in the fuel tank
finding-sudden-thirst = much more used than before
finding-none-used = none used
finding-low = low
finding-stalls = engine stalls
finding-water = water in the trap
finding-dry-in-salt = nothing on the glass, salt season
finding-dry = nothing on the glass
finding-oil-in-water = oil in the drained water
finding-milky = milky in the glass
finding-over-a-cup-a-week = over a cup in a week: short runs, running cold

# Oil families
family-mineral = mineral
family-synthetic-hydrocarbon = synthetic hydrocarbon
family-ester = ester
family-polyglycol = polyglycol
family-blend = blend

# What stands between the unit's oil and the drum's
mix-same = Same oil.
mix-other-grade = Same family, another grade. Do not pour; call.
mix-other-family = Another oil family. Do not pour; call.
mix-unknown = Unknown drum. Do not pour; call.
