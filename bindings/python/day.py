"""A driver's day through the generated Python: a real shop, a phone, a kill in between, files both ways.

Run by bindings/run, with the folder of the generated module on the path and SUMPBOOK_COMMAND set.
"""

import pathlib
import subprocess
import sys
import tempfile
import threading
import time
import unittest
import zlib

import sumpbook
from yard import DAY, Clock, Keeper, Shop, answer_stop, ids

HERE = pathlib.Path(__file__).parent


def png() -> bytes:
    """A picture of one grey dot."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        crc = zlib.crc32(kind + body).to_bytes(4, "big")
        return len(body).to_bytes(4, "big") + kind + body + crc

    head = b"\x89PNG\r\n\x1a\n"
    size = (1).to_bytes(4, "big") * 2 + b"\x08\x00\x00\x00\x00"
    return head + chunk(b"IHDR", size) + chunk(b"IDAT", zlib.compress(b"\x00\x80")) + chunk(b"IEND", b"")


class Listener(sumpbook.ChangeListener):
    def __init__(self):
        self.heard = []
        self.bell = threading.Event()

    def changed(self, what):
        self.heard.append(what)
        self.bell.set()


class Day(unittest.TestCase):
    def setUp(self):
        self.held = tempfile.TemporaryDirectory()
        self.addCleanup(self.held.cleanup)
        self.root = pathlib.Path(self.held.name)
        self.shop = Shop(self.root / "shop")
        self.folder = str(self.root / "phone")
        self.key = self.root / "keystore"
        self.phone = sumpbook.Phone.enrol_by_file(
            self.folder, self.shop.invitation(), "yard phone 2", Keeper(self.key), Clock(6, 0))
        self.units, self.people = ids(self.phone)
        self.amos, self.unit = self.people["Amos Tillery"], self.units["TH-01"]

    def signed(self):
        return sumpbook.Signed(pin_given=True)

    def said(self, **more):
        return sumpbook.Said(unit=self.unit, person=self.amos, **more)

    def test_a_day_with_a_kill_in_between_reaches_the_shop(self):
        about = self.phone.about()
        self.assertEqual((about.fleet, about.device), ("Tern Hollow Water", "yard phone 2"))
        self.assertEqual(len(self.key.read_bytes()), 32, "the shell's keystore has the key")
        self.assertFalse(pathlib.Path(self.folder, "phone.key").exists())
        self.assertEqual(len(self.units), 8)

        self.phone.shutdown()
        walker = subprocess.run(
            [sys.executable, str(HERE / "walker.py"), self.folder, str(self.key), "Amos Tillery", "5"],
            capture_output=True, text=True)
        self.assertEqual(walker.returncode, -9, walker.stderr)
        draft, label = walker.stdout.split()

        phone = sumpbook.Phone.open(self.folder, Keeper(self.key), Clock(6, 50))
        today = phone.today(self.amos)
        row = today.units[0]
        self.assertEqual(row.id, self.unit, "a unit with a draft stands first")
        self.assertTrue(row.main.act.is_go_on())
        self.assertEqual(row.main.act.draft, draft)
        self.assertEqual(sumpbook.key_of_main(row.main.act), "main-go-on")
        label = phone.stop(draft, label, [], 0).label

        photo = phone.keep_photo(png())
        self.assertEqual(phone.photo(photo)[:4], b"\x89PNG")
        defects = {"oil-leaks": ("a drop at the hose", [photo])}
        stops = 5
        while label is not None:
            label = answer_stop(phone, draft, label, defects)
            stops += 1
        self.assertGreater(stops, 10)
        recorded = phone.sign_pre_trip(draft, self.signed(), False, 900_000)
        self.assertEqual(recorded[-1], draft)
        self.assertEqual(phone.drafts().drafts, [])

        pouring = phone.begin_top_up(self.unit, self.amos, sumpbook.Fluid.COMPRESSOR_OIL)
        pour = sumpbook.Pour(volume=sumpbook.Figure(digits=25, places=2, unit="qt"))
        with self.assertRaises(sumpbook.PhoneError.Draft) as shut:
            phone.add_pour(pouring, pour, False)
        self.assertEqual(shut.exception.kind, sumpbook.DraftKind.GATE_CLOSED)
        profile = phone.unit(self.unit, self.amos).oil
        phone.say_top_up(pouring, sumpbook.TopUpSaid(
            gauge_zero=True, blow_down_silent=True, family=profile.family, grade=profile.grade,
            before=sumpbook.Glass.PERCENT(20)))
        for after in (30, 40, 50):
            level = sumpbook.Glass.PERCENT(after)
            phone.add_pour(pouring, sumpbook.Pour(volume=pour.volume, after=level, waited_ms=60_000), False)
        screen = phone.top_up(pouring)
        self.assertEqual((screen.poured_ml, len(screen.pours)), (710, 3))
        self.assertTrue(screen.main.act.is_finish_top_up())
        phone.say_top_up(pouring, sumpbook.TopUpSaid(cap_tight=True))
        phone.sign_top_up(pouring, self.signed())

        note = phone.keep_note(self.said(), sumpbook.ShownNote(
            what=sumpbook.NoteKind.REMINDER, as_shown="SERVICE 50 H"))
        phone.acknowledge(self.said(), note, True)
        self.assertTrue(phone.display(self.unit, note).note.first.told_shop)

        starting = phone.procedure(self.unit, "start", self.amos)
        self.assertEqual(starting.locked.why[0].item, "oil-leaks", "with the air locked it opens at the lock")
        turns = [step.id for step in starting.steps].index("pto-in")
        steps = [sumpbook.StepSaid(step=step.id, at=f"{DAY}T07:1{n}:00-06:00") for n, step in enumerate(starting.steps[: turns + 1])]
        phone.keep_steps(self.said(), "start", steps, "a main has burst")
        self.assertTrue(phone.glass(self.unit, None, None).stop.is_running())
        with self.assertRaises(sumpbook.PhoneError.Entry):
            phone.keep_steps(self.said(), "start", [sumpbook.StepSaid(step="jump", at=f"{DAY}T07:00:00-06:00")], None)
        stopping = [sumpbook.StepSaid(step=step.id, at=f"{DAY}T15:10:00-06:00") for step in phone.procedure(self.unit, "shut-down", self.amos).steps]
        phone.keep_steps(self.said(), "shut-down", stopping, None)
        spill = sumpbook.Happened(what=sumpbook.HappenedWhat.SPILL, place="by the pump house")
        phone.keep_happened(self.said(), spill)
        report = phone.begin_end_of_day(self.unit, self.amos)
        with self.assertRaises(sumpbook.PhoneError.Draft):
            phone.sign_end_of_day(report, self.signed())
        phone.none_found(report)
        phone.sign_end_of_day(report, self.signed())

        where = phone.where_it_is(0)
        # The review, the walk, the top-up, the note, its answer, the start, the stop, the spill, the report.
        self.assertEqual((where.counts.on_phone, where.counts.at_shop), (9, 0))
        self.assertEqual(sum(len(day.rows) for day in where.days), 9)
        made = phone.hand_over()
        self.assertEqual((made.entries, made.own), (9, 9))

        file, answer = self.root / "from-phone.sump", self.root / "answer.sump"
        file.write_bytes(made.bytes)
        late = ["--received", f"{DAY}T17:05:00-06:00"]
        self.shop.says("take-in", str(file), "--answer", str(answer), "--accept", about.key, *late)
        taken = phone.take_in(answer.read_bytes())
        self.assertTrue(taken.receipt)
        where = phone.where_it_is(0)
        self.assertEqual((where.counts.on_phone, where.counts.at_shop), (0, 9))
        again = phone.take_in(answer.read_bytes())
        self.assertEqual(again.admitted, 0, "twice the same file changes nothing")

        sheet = str(self.shop.says("day-sheet", DAY))
        for part in ("a drop at the hose", "a main has burst", "by the pump house", "SERVICE 50 H", "TH-01"):
            self.assertIn(part, sheet)

    def test_equal_screens_compare_equal_and_calls_are_quick(self):
        first, second = self.phone.unit(self.unit, self.amos), self.phone.unit(self.unit, self.amos)
        first.news, second.news = None, None
        self.assertEqual(first, second)
        began = time.perf_counter()
        for _ in range(50):
            self.phone.today(self.amos)
        print(f"\ntoday through Python: {(time.perf_counter() - began) / 50 * 1e3:.2f} ms", file=sys.stderr)

    def test_every_screen_answers(self):
        phone, unit, amos = self.phone, self.unit, self.amos
        self.assertEqual(phone.unit(unit, amos).door, "TH-01")
        self.assertEqual(phone.last_report(unit, []).door, "TH-01")
        glass = phone.glass(unit, sumpbook.Glass.PERCENT(38), True)
        self.assertEqual((glass.middle.low, glass.middle.high, glass.level), (45, 55, sumpbook.LevelNow.UNDER(7)))
        self.assertTrue(phone.hours(unit, None, sumpbook.Meter.COMPRESSOR).main.why_not.is_nothing_typed())
        self.assertEqual(phone.display(unit, None).open, [])
        self.assertEqual(phone.where_it_is(7).counts.on_phone, 0)
        self.assertEqual(phone.end_of_day(phone.begin_end_of_day(unit, amos)).door, "TH-01")
        self.assertTrue(isinstance(phone.wish(), sumpbook.TryWhen.NOW))

    def test_texts_come_in_both_languages(self):
        ask = sumpbook.TextAsk(key="main-all-ok", values={"lines": sumpbook.TextValue.COUNT(8)})
        english, spanish = sumpbook.text("en-US", ask), sumpbook.text("es-MX", ask)
        self.assertIn("8", english)
        self.assertNotEqual(english, spanish)
        self.assertEqual(sumpbook.texts("es", [ask, ask]), [spanish, spanish])
        self.assertFalse(sumpbook.has_text("en", "no-such-key"))

    def test_a_listener_hears_and_shutting_down_ends_it(self):
        listener = Listener()
        self.phone.set_listener(listener)
        self.phone.record_line('{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}')
        self.assertTrue(listener.bell.wait(5))
        self.assertTrue(listener.heard[0].entries and listener.heard[0].standing)
        self.phone.pause()
        with self.assertRaises(sumpbook.PhoneError.Closed) as closed:
            self.phone.today(self.amos)
        self.assertTrue(closed.exception.paused)
        self.phone.resume()
        self.assertEqual(self.phone.where_it_is(0).counts.on_phone, 1)
        self.phone.shutdown()
        self.phone.shutdown()
        for call in (self.phone.fleet, self.phone.resume, self.phone.hand_over, self.phone.pause):
            with self.assertRaises(sumpbook.PhoneError.Closed):
                call()

    def test_what_is_wrong_is_told_by_kind(self):
        error = sumpbook.PhoneError
        with self.assertRaises(error.Enrolment) as told:
            sumpbook.Phone.open(str(self.root / "nowhere"), None, None)
        self.assertEqual(told.exception.kind, sumpbook.EnrolmentKind.NOT_ENROLLED)
        with self.assertRaises(error.Enrolment) as told:
            sumpbook.Phone.enrol_by_file(self.folder, self.shop.invitation(), "again", Keeper(self.key), Clock(6, 5))
        self.assertEqual(told.exception.kind, sumpbook.EnrolmentKind.ALREADY_ENROLLED)
        self.assertEqual(told.exception.device, "yard phone 2")
        with self.assertRaises(error.Enrolment):
            sumpbook.Phone.enrol_by_code(str(self.root / "third"), "NO CODE", "third", None, None)
        with self.assertRaises(error.Argument) as told:
            self.phone.today("not an id")
        self.assertEqual(told.exception.what, "person")
        with self.assertRaises(error.Photo) as told:
            self.phone.keep_photo(b"no photo")
        self.assertEqual(told.exception.text_key, "error-not-a-photo")
        with self.assertRaises(error.File):
            self.phone.take_in(b"no file")
        with self.assertRaises(error.Online) as told:
            self.phone.exchange_once(1_000)
        self.assertEqual(told.exception.kind, sumpbook.OnlineKind.NO_HUB)
        with self.assertRaises(error.Entry):
            self.phone.record_line("{}")
        with self.assertRaises(error.Draft):
            self.phone.drop_draft(self.phone.new_id()) or self.phone.draft_json(self.phone.new_id())
        nobody = sumpbook.DefectName(entry=self.phone.new_id(), item="mirrors")
        with self.assertRaises(error.Slip) as told:
            self.phone.accept_slip("123", self.unit, nobody, None)
        self.assertEqual(told.exception.text_key, "error-slip-length")

    def test_a_keystore_that_fails_is_told_and_nothing_panics(self):
        class Broken(sumpbook.KeyKeeper):
            def keep(self, secret):
                raise sumpbook.PhoneError.Key(kind=sumpbook.KeyKind.KEYSTORE, reason="locked")

            def give_back(self):
                raise RuntimeError("no such thing")

        with self.assertRaises(sumpbook.PhoneError.Key) as told:
            sumpbook.Phone.open(self.folder, Broken(), None)
        self.assertEqual(told.exception.kind, sumpbook.KeyKind.KEYSTORE)
        self.assertIn("no such thing", told.exception.reason)


if __name__ == "__main__":
    unittest.main()
