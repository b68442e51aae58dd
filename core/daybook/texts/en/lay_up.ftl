# A set that is put away, and the list before it gives air again.

item-laid-up = Laid up
choice-return-list-open = return list not complete

return-manual = Maker's manual
    .look = what it asks of a set that stood is read, and done beside this list
return-oil-age = Oil and filter by age
    .look = changed where their calendar ran out while it stood
return-oil-look = Oil in the glass
    .look = level ground: in the middle, clear, no water, the family this set has
return-water = Water in the receiver
    .look = drained cold at pressure 0, where it has a bottom drain
return-condensate = Condensate
    .look = bowls, outlet filter and low points of the lines emptied
return-separator = Separator
    .look = its age by the calendar looked up; scavenge line, orifice and screen clear
return-intake-cooler = Intake and cooler
    .look = covers off, no nest, element dry and whole, fins clear
return-belts-shaft = Belts or drive shaft
    .look = no crack, no flat spot, tension set again, joints greased, guard on
return-hoses = Hoses, reels, couplings
    .look = no crack, no soft or stiff spot, seals and clips there
return-valves = Service and safety valves
    .look = each moves and closes; the safety valve's tag in date, its outlet free
return-battery-display = Battery and display
    .look = charged, no gnawed wire, the display wakes and its stop button works
return-tires = Tires of the truck
    .look = pressure cold, no crack, no flat spot from standing
return-first-start = First start prepared
    .look = cool and dry, valves closed, pressure on low where it has two, somebody beside it until it is warm
