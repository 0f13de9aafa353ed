using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class WeekEdits : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "week_edits",
                columns: table => new
                {
                    first_day = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    @base = table.Column<int>(name: "base", type: "INTEGER", nullable: false),
                    revision = table.Column<int>(type: "INTEGER", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    words = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    by = table.Column<string>(type: "TEXT", nullable: false),
                    before = table.Column<string>(type: "TEXT", nullable: false),
                    after = table.Column<string>(type: "TEXT", nullable: false),
                    pins = table.Column<string>(type: "TEXT", nullable: false),
                    unpins = table.Column<string>(type: "TEXT", nullable: false),
                    reverses = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_week_edits", x => new { x.first_day, x.number });
                });
            WrittenOnceTriggers.CreateOnSqlite(migrationBuilder, "week_edits");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnSqlite(migrationBuilder, "week_edits");
            migrationBuilder.DropTable(
                name: "week_edits");
        }
    }
}
