"""Who writes usage, and which flush of theirs was the last to be applied."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the table."""
    op.create_table(
        "usage_writers",
        sa.Column("writer", sa.String(32), nullable=False),
        sa.Column("flush_number", sa.Integer, nullable=False),
        sa.Column("written_time", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("writer", name="pk_usage_writers"),
    )
