"""What Alembic runs: the migrations, within the caller's connection and transaction."""

from alembic import context
from steelyard.store.tables import Table

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Table.metadata,
    transactional_ddl=False,  # the caller has begun a transaction, and ends it
)
context.run_migrations()
