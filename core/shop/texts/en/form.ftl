# Forms of every page.

form-unread = This form cannot be read. Nothing was changed. Open the page again.
address-unread = This address asks for something that cannot be read. Nothing was changed. Open the page from another page.
form-day = A day there is no day. Nothing was recorded. Go back and give it as year-month-day, such as 2026-10-22.
form-day-far = A day there is not of this time. Nothing was recorded. Go back and look at its year, between 1980 and 2099.
form-time = A time there is no time of day. Nothing was recorded. Go back and give it as 06:40.
form-hours = The hours there are no figure. Nothing was recorded. Go back and give them as on the meter, such as 2918.0.
form-comma = A comma there may be meant for the point. Nothing was recorded. Go back and write the point, as in 500.5; a comma stands only between thousands, as in 2,918.0.
form-time-of-day = Time
form-words = Words
form-because = because
hours-read-so = The meter does read so (tick only when asked)
hours-above = The meter cannot show that yet: more hours than went by since it was last read. Nothing was recorded. Go back and look at the figure once more; if the meter does read so, tick that it does.
hours-back = That is below what was read before. Nothing was recorded. Go back and look at the figure once more; if the meter does read so, tick that it does.
hours-unlike = That is far more a day than this unit runs. Nothing was recorded. Go back and look at the figure once more; if the meter does read so, tick that it does.
