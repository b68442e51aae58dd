# What lies on the trucks in cans, and what to load.

stock-title = Oil on the trucks
stock-open = oil on the trucks
stock-says = What somebody counted on a truck, less what was poured into it since. Loaded again, it is counted again.
section-to-load = To load, for what was poured since
stock-nothing = nothing
head-to-load = How much
head-jugs = Whole jugs of 1 gal
section-stock = On the trucks
stock-none = nothing counted, and no compressor oil poured in 28 days
head-counted = Counted
head-poured-since = Poured since
head-left = Left
stock-never = never counted; poured in 28 days
stock-left-unknown = not known
stock-more = more was poured than was counted: count it again
stock-line = On the truck: { $fluid }, { $left } left of { $counted } counted { $when }
stock-count = Count what lies on a truck
stock-count-how = As it is now, after loading. It stands for all that lay there before.
stock-volume = How much, such as 4 qt or 1 gal; 0 for none
stock-keep = Keep the count
stock-no-unit = No unit was chosen. Nothing was recorded. Go back and choose one.
stock-no-fluid = No fluid was chosen. Nothing was recorded. Go back and choose one.
stock-no-volume = An amount is a number with its unit, qt, gal, L or mL, such as 4 qt. Nothing was recorded. Go back and correct it.
stock-too-much = That is more than a truck carries in cans. Nothing was recorded. Go back and look at the figure and its unit.
