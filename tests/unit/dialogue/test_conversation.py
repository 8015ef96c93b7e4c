"""The conversation from end to end on a small book: order, back, undo, safety, refusals, second fault."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.job import events as ev
from diagnose.job.machines import list_machines
from diagnose.model import Book, load_book
from tests.small_job import STORY, small_book, talk, talk_on

BEGUN = STORY[:7]  # machine, plate, site, safety, complaint, no more, context


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("knowledge"))


def questions(text: str) -> list[str]:
    return [line.split("   ")[0] for line in text.splitlines() if line.startswith("Question ")]


def test_a_whole_job_ends_repaired(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, STORY, tmp_path)
    assert session.state.closed == ev.Closed("repaired")
    assert "Tell the kitchen:" in front.text
    assert session.state.repairs[0].cause == "box.fuse"


def test_questions_are_numbered_without_a_gap(book: Book, tmp_path: Path) -> None:
    _, front = talk(book, STORY, tmp_path)
    numbers = [int(q.split()[1]) for q in questions(front.text)]
    assert sorted(set(numbers)) == list(range(1, max(numbers) + 1))


def test_after_any_answer_a_new_process_asks_the_same_question(book: Book, tmp_path: Path) -> None:
    _, unbroken = talk(book, STORY, tmp_path)
    asked = questions(unbroken.text)
    session, front = talk(book, (), tmp_path)
    seen = questions(front.text)
    for answer in STORY:
        before = len(session.records)
        front = talk_on(session, [answer], tmp_path)
        assert len(session.records) > before or answer == STORY[-1]
        new = questions(front.text)
        seen += new[1:]  # the first one repeats the question the process before ended on
        assert new[0] == seen[len(seen) - len(new)]
    assert seen == asked


def test_back_reaches_the_first_question_and_offers_the_old_answers(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, STORY[:12], tmp_path)
    steps = len(session.state.answers)
    front = talk_on(session, ["b"] * steps, tmp_path)
    assert session.state.machine is None
    assert not session.state.answers
    assert "Enter alone: 20 V" in front.text
    assert "Enter alone: Quay Street, invented" in front.text
    assert front.text.rstrip().endswith(">")
    again = talk_on(session, ["b", "", "", ""], tmp_path)
    assert "first question" in again.text
    assert session.state.machine is not None
    assert session.state.machine.site == "Quay Street, invented"


def test_a_default_is_not_offered_for_the_stop_conditions(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*STORY[:4], "b", ""], tmp_path)
    assert not session.state.safety_asked
    assert "Enter alone is no answer here" in front.text


def test_an_answer_given_anew_is_no_default_any_more(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*STORY[:3], "b", "Pier Canteen, invented", "b"], tmp_path)
    front = talk_on(session, [], tmp_path)
    assert "Enter alone: Pier Canteen, invented" in front.text


def test_undo_takes_back_one_answer_and_asks_it_again(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "u 5"], tmp_path)
    assert not session.state.complaints
    assert "Taken back: Steam comes out" in front.text
    assert "What does the kitchen complain of?" in front.text.split("Taken back")[1]
    assert session.state.context == {"age": "old"}


def test_undo_lists_the_answers_by_the_number_of_their_question(book: Book, tmp_path: Path) -> None:
    _, front = talk(book, [*BEGUN, "u", "", "u", "99"], tmp_path)
    assert "   3  Site: Quay Street, invented" in front.text
    assert "Left as it was." in front.text
    assert '"99" is no question answered so far' in front.text


@pytest.mark.parametrize(("answer", "instruction"), [("1", "Everybody out."), ("2", "Switch off.")])
def test_a_stop_condition_ends_the_job_with_its_instruction(
    book: Book, tmp_path: Path, answer: str, instruction: str
) -> None:
    session, front = talk(book, [*STORY[:3], answer], tmp_path)
    assert session.state.closed == ev.Closed("stopped for safety")
    assert instruction in front.text
    assert "Complaint" not in front.text.split(instruction)[1].split("Closed")[0]


def test_danger_can_be_said_at_any_question(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "!", "2"], tmp_path)
    assert session.state.closed == ev.Closed("stopped for safety")
    assert "Switch off." in front.text


@pytest.mark.parametrize("typed", ["1", "", "yes", "live wire"])
def test_only_the_word_itself_acknowledges_a_hazard(book: Book, tmp_path: Path, typed: str) -> None:
    session, front = talk(book, [*BEGUN, "c volts", typed], tmp_path)
    assert not session.state.acknowledged
    assert "(1) Measure." not in front.text
    assert "Type LIVE and Enter to go on, or s to skip." in front.text


def test_caution_comes_before_the_steps(book: Book, tmp_path: Path) -> None:
    _, front = talk(book, [*BEGUN, "c volts", "live"], tmp_path)
    assert front.text.index("One hand.") < front.text.index("(1) Measure.")


def test_resume_shows_the_cautions_and_the_dangers_again(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*BEGUN, "c volts", "LIVE"], tmp_path)
    front = talk_on(session, [], tmp_path)
    assert "One hand." in front.text
    assert "Smell of gas?" in front.text
    assert front.text.index("One hand.") < front.text.index("(1) Measure.")


def test_several_complaints_at_once_are_one_question(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*STORY[:4], "1, 2", ""], tmp_path)
    assert session.state.present == ("no_rinse", "steam_out")
    assert questions(front.text)[-1] == "Question 7"
    talk_on(session, ["b", "b"], tmp_path)
    assert session.state.present == ()


def test_a_refused_value_names_the_range_and_what_was_typed(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "c volts", "LIVE", "2000", "12 psi", "hot"], tmp_path)
    assert not session.state.readings
    told = " ".join(front.text.split())
    assert "2000 V is out of range here (0 V to 600 V)" in told
    assert "psi is a unit of pressure" in told
    assert "'hot' is no number" in told


def test_skip_and_dont_know_are_kept_apart(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*BEGUN, "c volts", "s", "c where", "?"], tmp_path)
    assert session.state.skipped == {"box.volts": "can't reach", "box.where": "don't know"}


def test_still_there_goes_on_with_what_is_known(book: Book, tmp_path: Path) -> None:
    answers = [*STORY[:15], "LIVE", "208", "2", "2"]
    session, front = talk(book, answers, tmp_path)
    assert session.state.closed is None
    assert session.state.stage == 1
    after = front.text.split("still there")[-1]
    assert "there may be a second fault" in " ".join(after.split())
    assert "It steams as it should (no fault of the machine)" in after


def test_what_is_no_fault_ends_with_an_explanation(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "g it steams", "1", "1", "1", "1"], tmp_path)
    assert session.state.closed == ev.Closed("no fault")
    assert "Hot water steams." in front.text
    assert "Parts:" not in front.text


def test_a_sound_part_leads_back_to_the_search(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "g fuse", "LOCKED", "2"], tmp_path)
    assert session.state.repairs[0].found == "sound"
    assert "Is this gone now" not in front.text


def test_help_called_closes_with_what_is_known(book: Book, tmp_path: Path) -> None:
    session, front = talk(book, [*BEGUN, "e", "1"], tmp_path)
    assert session.state.closed == ev.Closed("help called")
    assert "Most probable now:" in front.text


def test_end_can_be_left_again(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*BEGUN, "e", "3"], tmp_path)
    assert session.state.closed is None
    assert session.state.turned.what == "advice"


def test_notes_and_rulings_out_are_kept(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*BEGUN, "n gasket is [b]cut[/b]", "x fuse"], tmp_path)
    assert session.state.notes == ("gasket is [b]cut[/b]",)
    assert session.state.ruled_out == ("box.fuse",)


def test_the_letters_show_and_change_nothing(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, BEGUN, tmp_path)
    before = len(session.records)
    front = talk_on(session, ["h", "w", "w 1", "r", "t", "t all", "i"], tmp_path)
    assert len(session.records) == before
    assert "Speaks for it" in front.text
    assert "Too little water leaves the arm" not in front.text  # not under this complaint
    assert front.text.count("Ranking") >= 2


def test_a_plate_is_read_and_the_machine_kept_by_name(book: Book, tmp_path: Path) -> None:
    answers = ["1", "2", "Bay 2", "S-17", "Pier Canteen, invented", "210 V", "99999 psi of", "?", "0"]
    session, front = talk(book, answers, tmp_path)
    machine = session.state.machine
    assert machine is not None
    assert (machine.name, machine.serial) == ("Bay 2", "S-17")
    assert not machine.assumed("volts")
    assert machine.assumed("rinse_pressure")
    assert [m.name for m in list_machines(tmp_path / "machines")] == ["Bay 2"]
    other, second = talk(book, ["Bay 2", "0"], tmp_path)
    assert "Bay 2 (saved, Pier Canteen, invented): Plain machine" in second.text
    assert other.state.machine == machine
    assert "Which site?" not in second.text
    assert "no unit" in front.text


def test_what_nobody_here_may_do_wants_a_typed_word(tmp_path: Path) -> None:
    from tests.small_job import small_book as make

    folder = tmp_path / "k"
    make(folder)
    path = folder / "assemblies" / "box.toml"
    path.write_text(path.read_text("utf-8").replace('who = "operator"', 'who = "licensed gas fitter"'), "utf-8")

    session, front = talk(load_book(folder), [*BEGUN, "c where", "LICENSED"], tmp_path)
    assert "Only a licensed gas fitter may do this" in front.text
    assert "box.where" in session.state.acknowledged


def test_a_closed_complaint_may_give_way_to_another(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*STORY[:-1], "2", "no water at the end", ""], tmp_path)
    assert session.state.present == ("no_rinse",)
    assert session.state.closed is None
    assert session.state.turned.what == "advice"


def test_two_complaints_in_one_sentence(book: Book, tmp_path: Path) -> None:
    session, _ = talk(book, [*STORY[:4], "no water at the end and fog"], tmp_path)
    assert session.state.present == ("no_rinse", "steam_out")


def test_a_machine_is_found_by_words(tmp_path: Path) -> None:
    session, _ = talk(load_book(), ["single tank gas booster"], tmp_path)
    assert session.state.machine is not None
    assert session.state.machine.type.id == "single_tank_gas_208"


def test_why_this_number(book: Book, tmp_path: Path) -> None:
    """f tells the figure wanted at a measuring question, of a named check, or the last finding's working."""
    _, before = talk(book, (*STORY[:4], "f"), tmp_path)
    assert "No figure was worked out yet" in before.text
    _, asked = talk(book, (*STORY[:7], "c volts", "LIVE", "f", "20"), tmp_path)
    told = asked.text[asked.text.index("Why this number: Volts at the fuse") :]
    assert "50 V or more" in told
    _, named = talk(book, (*STORY[:7], "f volts"), tmp_path)
    assert "Why this number: Volts at the fuse" in named.text
    _, after = talk(book, (*STORY[:10], "f volts"), tmp_path)
    assert "Found: Volts at the fuse" in after.text
    _, looked = talk(book, (*STORY[:7], "f where"), tmp_path)
    assert "no figure to work out" in looked.text
    _, lost = talk(book, (*STORY[:7], "f banana"), tmp_path)
    assert "is like no check of this machine" in lost.text
