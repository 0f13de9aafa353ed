using Microsoft.EntityFrameworkCore.Migrations;

namespace HomeLine.Agency.Storage.Sqlite.Migrations;

/// <summary>The ledger, the audit trail, published versions and printed sheets only grow.</summary>
public partial class WrittenOnce : Migration
{
    /// <inheritdoc/>
    protected override void Up(MigrationBuilder migrationBuilder) => WrittenOnceTriggers.CreateOnSqlite(migrationBuilder, WrittenOnceTriggers.FirstTables);

    /// <inheritdoc/>
    protected override void Down(MigrationBuilder migrationBuilder) => WrittenOnceTriggers.DropOnSqlite(migrationBuilder, WrittenOnceTriggers.FirstTables);
}
