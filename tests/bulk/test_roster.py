"""The roster of a chain: everybody once, ranked within their gym."""

import random
from pathlib import Path

import pyarrow as pa
import pyarrow.csv
import pyarrow.parquet as pq
import pytest
from bulk.member_rows import invented_members, table
from click.testing import CliRunner
from steelyard.bulk.partitions import Job, answer_partition, plan
from steelyard.bulk.places import place_of
from steelyard.bulk.roster import NoRoster, ranked, write_roster
from steelyard.cli import cli

GYMS = ["Quarry Lane", "Mill Yard", None]


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Answers to the members of two gyms and of none, two of them at fault."""
    folder = tmp_path_factory.mktemp("roster")
    bodies = invented_members(30, 8)
    bodies[4]["profile"]["weight_kg"] = bodies[5]["profile"]["weight_kg"] = 1.0
    (folder / "members").mkdir()
    pq.write_table(
        table("review_phase", bodies, gym=[GYMS[i % 3] for i in range(30)]), folder / "members" / "all.parquet"
    )
    columns = ("probabilities", "change.fat_kg.mean", "verdict", "end_date")
    job = Job(str(folder / "members"), str(folder / "answers"), "review_phase", columns, ("gym",))
    for partition in plan(place_of(job.members), rows_each=100):
        answer_partition(job, partition)
    return folder / "answers"


def test_everybody_is_ranked_within_their_gym(answers: Path, tmp_path: Path) -> None:
    rank = ["probabilities.slower", "-change.fat_kg.mean"]
    count = write_roster(str(answers), tmp_path / "roster.parquet", by="gym", rank=rank, keep=["verdict"])
    rows = pq.read_table(tmp_path / "roster.parquet").to_pylist()
    assert count == len(rows) == len({row["reference"] for row in rows}) == 30
    by_gym = {gym: [row for row in rows if row["gym"] == gym] for gym in GYMS}
    assert [row["gym"] for row in rows] == [
        row["gym"] for gym in ("Mill Yard", "Quarry Lane", None) for row in by_gym[gym]
    ]
    for members in by_gym.values():
        assert len(members) == 10
        known = [row for row in members if row["problem_code"] is None]
        keys = [(row["probabilities.slower"], -row["change.fat_kg.mean"]) for row in known]
        assert keys == sorted(keys, reverse=True)
        assert [row["rank"] for row in known] == [1 + sum(other > key for other in keys) for key in keys]
        assert all(row["verdict"] for row in known)
        assert members[len(known) :] == [row for row in members if row["problem_code"]]
    faulty = [row for row in rows if row["problem_code"]]
    assert {(row["reference"], row["problem_code"], row["rank"]) for row in faulty} == {
        ("member-00004", "SCHEMA_VIOLATION", None),
        ("member-00005", "SCHEMA_VIOLATION", None),
    }


def test_equals_share_a_rank_and_missing_figures_come_last() -> None:
    rng = random.Random(2)
    figures = [3.0, 3.0, 2.0, None, 5.0]
    rng.shuffle(figures)
    rows = pa.table(
        {
            "gym": ["a"] * 5,
            "reference": [f"m{i}" for i in range(5)],
            "score": figures,
            "problem_code": pa.nulls(5, pa.string()),
        }
    )
    made = ranked(rows, by="gym", rank=["score"])
    assert list(zip(made["rank"].to_pylist(), made["score"].to_pylist(), strict=True)) == [
        (1, 5.0),
        (2, 3.0),
        (2, 3.0),
        (4, 2.0),
        (5, None),
    ]


def test_the_command_writes_a_table_for_a_desk(answers: Path, tmp_path: Path) -> None:
    path = tmp_path / "roster.csv"
    asked = ["bulk", "roster", str(answers), str(path), "--by", "gym", "--rank", "-end_date,probabilities.faster"]
    done = CliRunner().invoke(cli, asked)
    assert done.exit_code == 0, done.output
    assert "30 members" in done.output
    assert pyarrow.csv.read_csv(path).num_rows == 30


def test_gyms_that_are_folders_need_no_column(tmp_path: Path) -> None:
    bodies = invented_members(8, 3)
    bodies[0]["profile"]["weight_kg"] = 1.0
    for gym, first in (("Quarry Lane", 0), ("Mill Yard", 4)):
        path = tmp_path / "members" / f"gym={gym}" / "part-0.parquet"
        path.parent.mkdir(parents=True)
        made = table("review_phase", bodies[first : first + 4])
        pq.write_table(made.set_column(0, "reference", pa.array([f"m{first + i}" for i in range(4)])), path)
    job = Job(str(tmp_path / "members"), str(tmp_path / "answers"), "review_phase", ("probabilities",), ())
    for partition in plan(place_of(job.members), rows_each=100):
        answer_partition(job, partition)
    write_roster(job.answers, tmp_path / "roster.parquet", by="gym", rank=["probabilities.slower"])
    rows = pq.read_table(tmp_path / "roster.parquet").to_pylist()
    assert [row["gym"] for row in rows] == ["Mill Yard"] * 4 + ["Quarry Lane"] * 4
    assert [row["rank"] for row in rows[::4]] == [1, 1]
    assert [row["rank"] is None for row in rows] == [False] * 7 + [True]
    assert rows[-1]["reference"] == "m0"


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"by": "club"}, "no column club"),
        ({"rank": ["correction_kcal"]}, "no column correction_kcal"),
        ({"rank": ["verdict"]}, "ranked by a number or a date"),
        ({"rank": ["probabilities"]}, "ranked by a number or a date"),
        ({"rank": []}, "at least one"),
    ],
)
def test_what_cannot_be_ranked_is_said(answers: Path, tmp_path: Path, change: dict[str, object], words: str) -> None:
    with pytest.raises(NoRoster, match=words):
        write_roster(str(answers), tmp_path / "x.parquet", **{"by": "gym", "rank": ["probabilities.slower"]} | change)  # type: ignore[arg-type]
    assert not (tmp_path / "x.parquet").exists()


@pytest.mark.parametrize(
    ("roster", "keep", "words"),
    [
        ("roster.csv", ["probabilities"], "probabilities is of type struct"),
        ("roster.csv", ["cautions"], "cautions is of type list"),
        ("none/roster.csv", [], "cannot be written"),
        ("none/roster.parquet", [], "cannot be written"),
    ],
)
def test_what_cannot_be_written_is_said(
    answers: Path, tmp_path: Path, roster: str, keep: list[str], words: str
) -> None:
    with pytest.raises(NoRoster, match=words):
        write_roster(str(answers), tmp_path / roster, by="gym", rank=["end_date"], keep=keep)


def test_a_folder_without_answers_is_said(tmp_path: Path) -> None:
    with pytest.raises(NoRoster, match="no answers"):
        write_roster(str(tmp_path), tmp_path / "x.parquet", by="gym", rank=["x"])
