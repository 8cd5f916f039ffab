"""Organisations, API keys, usage."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the first three tables."""
    instant = sa.DateTime(timezone=True)
    op.create_table(
        "organisations",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("created_time", instant, nullable=False),
        sa.UniqueConstraint("name", name="uq_organisations_name"),
        sa.PrimaryKeyConstraint("id", name="pk_organisations"),
    )
    op.create_table(
        "api_keys",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("organisation_id", sa.Integer, nullable=False),
        sa.Column("prefix", sa.String(32), nullable=False),
        sa.Column("secret_sha256", sa.LargeBinary, nullable=False),
        sa.Column("label", sa.String(200), nullable=False),
        sa.Column("scopes", sa.String(200), nullable=False),
        sa.Column("created_time", instant, nullable=False),
        sa.Column("expiry_time", instant),
        sa.Column("revoked_time", instant),
        sa.UniqueConstraint("prefix", name="uq_api_keys_prefix"),
        sa.PrimaryKeyConstraint("id", name="pk_api_keys"),
        sa.ForeignKeyConstraint(
            ["organisation_id"], ["organisations.id"], name="fk_api_keys_organisation_id_organisations"
        ),
    )
    op.create_index("ix_api_keys_organisation_id", "api_keys", ["organisation_id"])
    op.create_table(
        "usage",
        sa.Column("key_id", sa.Integer, nullable=False),
        sa.Column("operation_id", sa.String(100), nullable=False),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("request_count", sa.Integer, nullable=False),
        sa.PrimaryKeyConstraint("key_id", "operation_id", "day", name="pk_usage"),
        sa.ForeignKeyConstraint(["key_id"], ["api_keys.id"], name="fk_usage_key_id_api_keys"),
    )
