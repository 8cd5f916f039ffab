"""Daily quotas, the key that a key replaces, and units beside requests."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the columns. What was used before cost one unit a request."""
    op.add_column("organisations", sa.Column("daily_quota", sa.Integer))
    op.add_column("api_keys", sa.Column("daily_quota", sa.Integer))
    op.add_column(
        "api_keys",
        sa.Column("replaces_id", sa.Integer, sa.ForeignKey("api_keys.id", name="fk_api_keys_replaces_id_api_keys")),
        inline_references=True,  # SQLite adds no constraint to a table that exists
    )
    op.add_column("usage", sa.Column("unit_count", sa.Integer, nullable=False, server_default="0"))
    op.execute("UPDATE usage SET unit_count = request_count")
