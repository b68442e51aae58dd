# Forms of every page.

form-unread = This form cannot be read. Nothing was changed. Open the page again.
form-day = A day there is no day. Nothing was recorded. Go back and give it as year-month-day, such as 2026-10-22.
form-time = A time there is no time of day. Nothing was recorded. Go back and give it as 06:40.
form-hours = The hours there are no figure. Nothing was recorded. Go back and give them as on the meter, such as 2918.0.
form-time-of-day = Time
form-words = Words
form-because = because
