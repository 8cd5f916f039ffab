"""The operator's handbook: what it names exists, and what it tells to do works."""

import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
import servers
import yaml
from in_process import PATIENCE_SECONDS
from servers import Server, new_database
from steelyard.cli import cli
from steelyard.cli.settings_page import settings_page
from steelyard.settings import PREFIX, Settings
from steelyard.store.store import FlushId, Store, UsageCell, UsageCount

DOCKER = Path(__file__).resolve().parents[1] / "docker"
HANDBOOK = (DOCKER / "handbook.md").read_text()
BULK = (DOCKER / "bulk.md").read_text()
ALERTS = yaml.safe_load((DOCKER / "alerts.yaml").read_text())["groups"][0]["rules"]


def test_the_page_of_settings_is_what_the_code_says() -> None:
    assert (DOCKER / "settings.md").read_text() == settings_page()
    assert all(PREFIX + name.upper() in settings_page() for name in Settings.__struct_fields__)


@pytest.mark.parametrize("page", [HANDBOOK, BULK], ids=["handbook", "bulk"])
def test_what_the_handbook_names_exists(page: str) -> None:
    for link in re.findall(r"\]\(([\w./-]+)\)", page):
        assert (DOCKER / link).exists(), link
    for setting in re.findall(rf"{PREFIX}(\w+)", page):
        assert setting.lower() in Settings.__struct_fields__, setting
    for command in re.findall(r"`steelyard (\w+)", page):
        assert command in cli.commands, command
    for group, command in re.findall(r"`steelyard (keys|quotas|usage|bulk) (\w+)", page):
        assert command in cli.commands[group].loaded().commands, command  # type: ignore[attr-defined]


def test_the_commands_of_a_bulk_run_are_understood() -> None:
    block = re.findall(r"```sh\n(.*?)```", BULK, re.DOTALL)[0]
    for line in block.splitlines():
        _, group, name, *words = line.split()
        command = cli.commands[group].loaded().commands[name]  # type: ignore[attr-defined]
        assert command.make_context(name, words).params


def test_every_alert_has_a_remedy() -> None:
    for rule in ALERTS:
        assert re.search(rf"^\|[^|]*\b{rule['alert']}\b", HANDBOOK, re.MULTILINE), rule["alert"]


def test_commands_under_systemd_have_the_services_database() -> None:
    unit = (DOCKER / "steelyard.service").read_text()
    (url,) = re.findall(r"^Environment=(STEELYARD_DATABASE_URL=\S+)$", unit, re.MULTILINE)
    (program,) = re.findall(r"^ExecStart=(\S+/)steelyard ", unit, re.MULTILINE)
    assert f"`sudo env {url} {program}`" in HANDBOOK


def test_the_unit_of_systemd_leaves_time_to_drain() -> None:
    unit = (DOCKER / "steelyard.service").read_text()
    stop = re.search(r"^TimeoutStopSec=(\d+)$", unit, re.MULTILINE)
    assert stop is not None
    assert int(stop[1]) > Settings().drain_seconds + 5


@pytest.mark.skipif(not (shutil.which("haproxy") and shutil.which("openssl")), reason="needs haproxy and openssl")
def test_the_lines_for_tls_are_understood_by_the_proxy(tmp_path: Path) -> None:
    text = " ".join(HANDBOOK.split())
    bind, header = re.findall(r"`(bind [^`]+|http-response set-header Strict[^`]+)`", text)
    (certificates := tmp_path / "certificates").mkdir()
    certificate, key = certificates / "a.pem", tmp_path / "a.key"
    made = ["openssl", "req", "-x509", "-nodes", "-newkey", "rsa:2048", "-subj", "/CN=service.test", "-days", "1"]
    subprocess.run([*made, "-keyout", key, "-out", certificate], capture_output=True, check=True)
    certificate.write_text(certificate.read_text() + key.read_text())
    ended = bind.replace("/certificates/", f"{certificates}/") + f"\n    {header}"
    configuration = tmp_path / "haproxy.cfg"
    for lines, code in ((ended, 0), (ended.replace("alpn", "alpm"), 1)):
        configuration.write_text((DOCKER / "haproxy.cfg").read_text().replace("bind :8080", lines, 1))
        ran = subprocess.run(["haproxy", "-c", "-f", configuration], capture_output=True, text=True, check=False)
        assert ran.returncode == code, ran.stderr


def _blocks() -> list[list[str]]:
    """The commands that the handbook gives, block by block."""
    return [block.splitlines() for block in re.findall(r"```sh\n(.*?)```", HANDBOOK, re.DOTALL)]


@pytest.mark.parametrize("program", ["sqlite3", "python"])
async def test_a_file_is_backed_up_while_it_is_used(tmp_path: Path, program: str) -> None:
    (command,) = (line for line in _blocks()[0] if line.startswith(program))
    store = Store(f"sqlite+aiosqlite:///{tmp_path}/steelyard.sqlite3")
    await store.migrate()
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    first, *words = shlex.split(command)
    found = sys.executable if first == "python" else shutil.which(first)
    if found is None:
        servers.missing(first)
    subprocess.run([str(found), *words], check=True, cwd=tmp_path, capture_output=True)
    later, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    await store.close()
    for file in tmp_path.glob("steelyard.sqlite3*"):
        file.unlink()
    (tmp_path / "copy.sqlite3").rename(tmp_path / "steelyard.sqlite3")
    restored = Store(f"sqlite+aiosqlite:///{tmp_path}/steelyard.sqlite3")
    assert set(await restored.find_keys([key.prefix, later.prefix])) == {key.prefix}
    await restored.create_key("Quarry Lane Gym", ["compute"])
    await restored.close()


@pytest.mark.parametrize("store_url", ["postgresql"], indirect=True)
async def test_a_backup_is_restored(postgresql_server: Server, store_url: str, tmp_path: Path) -> None:
    """By the commands that the handbook gives."""
    programs = {name: servers._postgresql_program(name) for name in ("pg_dump", "pg_restore")}
    if not all(programs.values()):
        servers.missing("pg_dump")
    store = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    await store.migrate()
    key, token = await store.create_key("Quarry Lane Gym", ["compute"])
    used = {UsageCell(key.id, "plan_phases", key.created_time.date()): UsageCount(3, 30)}
    await store.add_usage(used, FlushId("a", 1))
    await store.close()
    empty = new_database(postgresql_server)
    plain = {"DATABASE": store_url, "NEW_DATABASE": empty}
    for line in _blocks()[1]:
        words = line.replace('"', "").split()
        words[0] = programs[words[0]] or words[0]
        for name, url in plain.items():
            words = [re.sub(rf"\${name}$", url.replace("+asyncpg", ""), word) for word in words]
        subprocess.run(words, check=True, cwd=tmp_path, capture_output=True)
    restored = Store(empty, timeout_seconds=PATIENCE_SECONDS)
    await restored.prepare()
    found = await restored.find_key(key.prefix)
    assert found is not None
    assert found.fits(token.partition(".")[2])
    assert await restored.usage() == used
    await restored.create_key("Quarry Lane Gym", ["compute"])
    await restored.add_usage(used, FlushId("a", 1))
    assert await restored.usage() == used, "a flush from before the backup is not applied again"
    await restored.close()
