using Microsoft.EntityFrameworkCore.Migrations;

namespace HomeLine.Agency.Storage.Postgres.Migrations;

/// <summary>The ledger, the audit trail, published versions and printed sheets only grow.</summary>
public partial class WrittenOnce : Migration
{
    /// <inheritdoc/>
    protected override void Up(MigrationBuilder migrationBuilder) => WrittenOnceTriggers.CreateOnPostgres(migrationBuilder);

    /// <inheritdoc/>
    protected override void Down(MigrationBuilder migrationBuilder) => WrittenOnceTriggers.DropOnPostgres(migrationBuilder);
}
