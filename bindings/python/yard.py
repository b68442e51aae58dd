"""A real shop in a temporary folder, driven by the `sumpbook` command, and a day's clock."""

import datetime
import json
import os
import pathlib
import subprocess

import sumpbook

COMMAND = os.environ["SUMPBOOK_COMMAND"]
FLEET = pathlib.Path(__file__).parents[2] / "core/shop/examples/fleet.jsonl"
DAY = "2026-10-19"


class Shop:
    """The shop's folder."""

    def __init__(self, folder: pathlib.Path):
        self.folder = folder
        self.says("init", "--name", "Tern Hollow Water", "--zone", "America/Denver", "--demo",
                  "--received", f"{DAY}T05:00:00-06:00")
        self.says("register", "--received", f"{DAY}T05:10:00-06:00", str(FLEET))

    def says(self, *words: str, shop: bool = True) -> dict:
        """What a verb answers, as JSON."""
        where = ["--shop", str(self.folder)] if shop else []
        done = subprocess.run([COMMAND, *words, *where, "--json"], capture_output=True, text=True)
        assert done.returncode == 0, f"{words}: {done.stdout} {done.stderr}"
        return json.loads(done.stdout) if done.stdout.strip() else {}

    def invitation(self) -> bytes:
        """An invitation for one phone."""
        file = self.folder / "invitation.sump"
        self.says("invite", str(file), "--received", f"{DAY}T05:20:00-06:00")
        return file.read_bytes()


class Clock(sumpbook.PhoneClock):
    """A clock that goes on by a second whenever it is asked, so that a day is the same every time."""

    def __init__(self, hour: int, minute: int):
        zone = datetime.timezone(datetime.timedelta(hours=-6))
        self.at = datetime.datetime.fromisoformat(DAY).replace(hour=hour, minute=minute, tzinfo=zone)

    def now(self):
        self.at += datetime.timedelta(seconds=1)
        return self.at.isoformat(timespec="seconds")


class Keeper(sumpbook.KeyKeeper):
    """A keystore: a file in a folder of its own."""

    def __init__(self, file: pathlib.Path):
        self.file = file

    def keep(self, secret):
        self.file.write_bytes(secret)

    def give_back(self):
        return self.file.read_bytes() if self.file.exists() else None


def ids(phone) -> tuple[dict, dict]:
    """Units by door number, people by name."""
    fleet = phone.fleet()
    return {unit.door: unit.id for unit in fleet.units}, {person.name: person.id for person in fleet.people}


FIGURES = {"psi": ("1", 0), "s": ("31", 0), "%": ("50", 0), "in/32": ("8", 0), "months": ("3", 0)}


def answer_stop(phone, draft: str, label: str, defects: dict) -> str | None:
    """Answers a stop as a driver does: figures and defects by themselves, the rest together. Gives the next one."""
    screen = phone.stop(draft, label, [], 0)
    # The button takes no tap in the first moment, nor before every line was seen.
    assert screen.main.why_not is not None or screen.left == 0
    phone.reach_stop(draft, screen.label)
    for line in screen.lines:
        if line.answer is not None:
            continue
        found = defects.get(line.item)
        if found is not None:
            phone.answer_line(draft, sumpbook.Answer(
                item=line.item, place=line.place, answer=sumpbook.AnswerKind.DEFECT, word=line.words[0].word,
                words=found[0], photos=found[1]))
        elif line.figure is not None and line.figure.how.name in ("ASKED", "CHOSEN", "TIMED"):
            if line.figure.unit == "h":
                phone.pre_trip_hours(draft, 28_624)
                continue
            digits, places = FIGURES[line.figure.unit]
            figure = sumpbook.Figure(digits=int(digits), places=places, unit=line.figure.unit)
            phone.answer_line(draft, sumpbook.Answer(
                item=line.item, place=line.place, answer=sumpbook.AnswerKind.OK,
                figures=[sumpbook.ItemFigure(figure=figure, how=sumpbook.How.ASKED)]))
    seen = [line.id for line in screen.lines]
    screen = phone.stop(draft, label, seen, 5_000)
    if screen.left:
        assert screen.main.why_not is None, screen.main
        assert phone.ok_together(draft, label, 5_000) == screen.left
        screen = phone.stop(draft, label, seen, 5_000)
    assert screen.left == 0, screen
    assert screen.main.act.is_next_stop(), screen.main
    return screen.main.act.stop
