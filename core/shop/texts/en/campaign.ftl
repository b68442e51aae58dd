# Makers' campaigns: work to be done once on units of some serials, by a day.

section-campaigns = Makers' campaigns
campaigns-none = none entered
head-campaign = Maker's campaign
head-serial = Serial
open-campaigns = { $count ->
    [one] 1 campaign to be done
   *[other] { $count } campaigns to be done
}
open-campaigns-look = { $count ->
    [one] look at it for 1 campaign
   *[other] look at it for { $count } campaigns
}

campaign-counts = { $all ->
    [one] 1 unit compared
   *[other] { $all } units compared
}: { $open } to be done, { $past } of them past the last good day or hour, { $look } to be looked at, { $done } done
campaign-of-set = of compressor sets { $ranges }
campaign-of-truck = of trucks { $ranges }
campaign-range = { $from } to { $to }
campaign-until = last good day { $day }
campaign-until-hours = last good day { $day } or at { $hours } h, whichever comes first
campaign-locks-nothing = locks nothing
campaign-locks-after = locks { $part } after that day
campaign-locks-now = the maker says stop: locks { $part } until it is done
campaign-paper-said = paper { $paper }
campaign-read-at-said = to be read at { $paper }
campaign-no-paper = number of the paper not recorded
campaign-entered = entered { $when }, as it is now by { $who }
campaign-withdrawn = Taken back { $when }: { $why }
campaign-units = Units of { $name }
campaign-no-serial = not recorded
campaign-state-open = to be done
campaign-state-past-deadline = past its last good day or hour
campaign-state-look = to be looked at
campaign-state-done = done
campaign-state-withdrawn = taken back
campaign-state-not-of-this-unit = not of this unit
campaign-late = { $days ->
    [one] 1 day late
   *[other] { $days } days late
}
campaign-days-left = { $days ->
    [0] today is the last good day
    [one] 1 day left
   *[other] { $days } days left
}
campaign-looked = looked at: { $why }

campaign-look-at = Look at { $unit }
campaign-is-meant = It is meant
campaign-is-not-meant = It is not meant
campaign-look-why = What was looked at, and what it said
campaign-own-name = Your name, as you sign in
campaign-look-keep = Keep what was seen
campaign-withdraw = Take { $name } back
campaign-withdraw-keep = Take it back
campaign-enter = Enter a maker's campaign
campaign-enter-says = One of the same name is changed, whole. Serials order by their text, then by the number at their end; capitals, blanks and signs do not matter. A unit whose serial does not compare is told by name, to be looked at. The maker's paper comes first.
campaign-name = Name here, such as the number of the paper
campaign-words = What is to be done
campaign-paper = Number of the maker's paper
campaign-read-at = Where it can be read
campaign-of = Whose serials
campaign-sets = Compressor sets
campaign-trucks = Trucks
campaign-ranges = Serials, one range a line, two dots between first and last; or one alone
campaign-deadline = Last good day
campaign-hours = Last good hours of the unit, when the paper gives them
campaign-locks = What it locks after that
campaign-stop = The maker says stop: it locks from now on
campaign-keep = Keep the campaign

campaign-no-name = The campaign has no name. Nothing was recorded. Go back and give one, such as the number of the paper.
campaign-no-words = Nothing says what is to be done. Nothing was recorded. Go back and say it.
campaign-no-range = No serials were given. Nothing was recorded. Go back and give one range a line.
campaign-no-day = The campaign has no last good day. Nothing was recorded. Go back and give it.
campaign-no-answer = Nothing says whether the unit is meant. Nothing was recorded. Go back and choose.
