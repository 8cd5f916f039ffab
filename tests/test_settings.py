"""Settings from the environment."""

import pytest
from steelyard.settings import Settings, SettingsError, read_settings


def test_defaults_need_no_environment() -> None:
    assert read_settings({"PATH": "/bin"}) == Settings()


def test_values_are_read_and_overridden() -> None:
    environment = {"STEELYARD_BODY_LIMIT_BYTES": "2048", "STEELYARD_KEY_CACHE_SECONDS": "1.5"}
    assert read_settings({"STEELYARD_MIGRATE_AT_START": "true"}).migrate_at_start is True
    settings = read_settings(environment, body_limit_bytes=4096)
    assert (settings.body_limit_bytes, settings.key_cache_seconds) == (4096, 1.5)


def test_switches_and_origins() -> None:
    environment = {"STEELYARD_WORKBENCH": "true", "STEELYARD_CORS_ORIGINS": "https://a.example, http://localhost:5173"}
    settings = read_settings(environment)
    assert settings.workbench is True
    assert settings.allowed_origins == ("https://a.example", "http://localhost:5173")


def test_the_clients_variables_are_not_the_services() -> None:
    assert read_settings({"STEELYARD_KEY": "x", "STEELYARD_URL": "y"}) == Settings()


@pytest.mark.parametrize(
    ("variable", "value", "message"),
    [
        ("STEELYARD_DATABSE_URL", "x", "STEELYARD_DATABSE_URL is not a setting: did you mean STEELYARD_DATABASE_URL?"),
        ("STEELYARD_X", "x", "STEELYARD_X is not a setting: known are STEELYARD_BATCH_IDLE_SECONDS, "),
        ("STEELYARD_BODY_LIMIT_BYTES", "1 MiB", "STEELYARD_BODY_LIMIT_BYTES must be a whole number"),
        ("STEELYARD_BODY_LIMIT_BYTES", "0", "STEELYARD_BODY_LIMIT_BYTES must be above 0"),
        ("STEELYARD_KEY_CACHE_SECONDS", "soon", "STEELYARD_KEY_CACHE_SECONDS must be a number"),
        ("STEELYARD_KEY_CACHE_SECONDS", "-1", "STEELYARD_KEY_CACHE_SECONDS must be 0 or more"),
        ("STEELYARD_USAGE_FLUSH_SECONDS", "nan", "STEELYARD_USAGE_FLUSH_SECONDS must be above 0"),
        ("STEELYARD_BODY_SECONDS", "0", "STEELYARD_BODY_SECONDS must be above 0"),
        ("STEELYARD_KEY_CACHE_SECONDS", "inf", "STEELYARD_KEY_CACHE_SECONDS must be at most 1,000,000,000"),
        ("STEELYARD_QUEUE_SECONDS", "1e400", "STEELYARD_QUEUE_SECONDS must be at most 1,000,000,000"),
        ("STEELYARD_USAGE_DAYS", "9" * 20, "STEELYARD_USAGE_DAYS must be at most 36,500"),
        (
            "STEELYARD_METRICS_TOKEN",
            "of-a-file\n",
            "STEELYARD_METRICS_TOKEN must be letters, digits and signs of ",
        ),
        ("STEELYARD_METRICS_TOKEN", " x1", "STEELYARD_METRICS_TOKEN must be letters, digits and signs of "),
        ("STEELYARD_METRICS_TOKEN", "schlüssel", "STEELYARD_METRICS_TOKEN must be letters, digits and signs of "),
        ("STEELYARD_CORS_ORIGINS", "https://A.example", "STEELYARD_CORS_ORIGINS must be origins such as "),
        ("STEELYARD_CORS_ORIGINS", "https://ü.example", "STEELYARD_CORS_ORIGINS must be origins such as "),
        ("STEELYARD_METRICS", "perhaps", "STEELYARD_METRICS must be true or false"),
        ("STEELYARD_METRICS", "1", "STEELYARD_METRICS needs a token that scrapers send, STEELYARD_METRICS_TOKEN; "),
        ("STEELYARD_CORS_ORIGINS", "*", "STEELYARD_CORS_ORIGINS must be origins such as "),
        ("STEELYARD_CORS_ORIGINS", "https://a.example/path", "STEELYARD_CORS_ORIGINS must be origins such as "),
        ("STEELYARD_MIGRATE_AT_START", "maybe", "STEELYARD_MIGRATE_AT_START must be true or false"),
        ("STEELYARD_RATE_LIMIT_REQUESTS", "-1", "STEELYARD_RATE_LIMIT_REQUESTS must be 0 or more"),
        ("STEELYARD_RATE_LIMIT_WINDOW_SECONDS", "0", "STEELYARD_RATE_LIMIT_WINDOW_SECONDS must be above 0"),
        ("STEELYARD_RATE_LIMIT_STORE_URL", "here", "STEELYARD_RATE_LIMIT_STORE_URL must be a URL such as "),
        ("STEELYARD_DATABASE_URL", "", "STEELYARD_DATABASE_URL must be a database URL such as "),
        ("STEELYARD_DATABASE_URL", "nonsense", "STEELYARD_DATABASE_URL must be a database URL such as "),
    ],
)
def test_what_cannot_be_read_is_named(variable: str, value: str, message: str) -> None:
    with pytest.raises(SettingsError) as raised:
        read_settings({variable: value})
    assert str(raised.value).startswith(message)
    assert not value or value in message or value not in str(raised.value)
