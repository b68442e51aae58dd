# Pages of paper.

paper-type = Type a paper page
paper-blank = Blank page to print
paper-blank-what = Only what the unit has, in both languages. Its edition stands on it, so that an old pad is seen.
paper-photo = Photo of the page (JPEG, PNG or WebP, at most 4 MiB)
paper-photo-alt = Photo of the signed page
paper-go = To the form
paper-no-unit = There is no unit given. Nothing was kept. Go back and give its door number.
photo-large = This photo has more than 4 MiB. It was not kept. Go back and take a smaller one.
photo-kind = This is no photo that can be kept: only JPEG, PNG and WebP are. It was not kept. Go back and choose another.
photo-damaged = This photo is damaged. It was not kept. Go back and take it again.

paper-title = Type a paper page, { $unit }
paper-edition-on-page = Edition on the page
paper-edition = edition { $edition }
paper-kept = The page is kept. The next one?
paper-all-here = Everything typed still stands here.
paper-old = This is edition { $edition }, an old pad. Print new ones.
paper-no-longer = On it and no longer asked: { $lines }.
paper-not-yet = Asked now and not on it: { $lines }.
paper-no-photo = No photo of this page was given.
paper-turn = Turn
paper-zoom = Larger
paper-keys = Keys: 1 OK, 2 defect, 3 no such part, 4 could not check. Then it goes on to the next line.
paper-word = What is wrong
paper-signed = What stands below the lines
paper-hours = Hours of the meter
paper-glass = Glass, percent
paper-drop-released = Drop in 60 s, brakes released, psi
paper-drop-applied = Drop in 60 s, pedal held, psi
paper-driver = Driver on the page
paper-signed-day = Day on the page
paper-signed-at = Signed on paper at
paper-number = page no.
paper-typed-by = Typed by { $who }
paper-typed = { $typed } of { $of } typed
paper-blank-lines = Lines left open here are blank on the page too
paper-keep = Keep as paper
paper-no-edition = There is no page of that edition. Nothing was recorded.
paper-no-time = The page has no day and time. Nothing was recorded. Give what stands on it.
paper-no-driver = The page has no driver. Nothing was recorded. Choose who signed it.
paper-lines-open = Some lines are open. Nothing was recorded. Type them, or say that they are blank on the page.
paper-no-word = A defect has no word. Nothing was recorded. Choose what is wrong at that line.
paper-figure = A figure there is no figure of its kind. Nothing was recorded. Give it as on the page.

# The sheet itself
paper-blank-of = Blank page, { $unit }
paper-sheet = { $number } of { $of }
paper-date = Date
paper-circles = One circle a line: 1 OK, 2 defect, 3 no such part, 4 could not check. Say the words of a defect below.
paper-draw = Draw a line across the glass where the oil stands.
paper-defects = Defects: item and words
paper-signature = Signature
paper-typed-on = Typed in by, on
