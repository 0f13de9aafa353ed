using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class CheckIns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "check_ins",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    visit = table.Column<string>(type: "TEXT", nullable: false),
                    day = table.Column<string>(type: "TEXT", nullable: false),
                    nurse = table.Column<string>(type: "TEXT", nullable: false),
                    is_out = table.Column<bool>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_check_ins", x => x.row);
                });

            migrationBuilder.CreateIndex(
                name: "IX_check_ins_day",
                table: "check_ins",
                column: "day");

            migrationBuilder.CreateIndex(
                name: "IX_check_ins_visit_nurse_is_out",
                table: "check_ins",
                columns: new[] { "visit", "nurse", "is_out" },
                unique: true);

            WrittenOnceTriggers.CreateOnSqlite(migrationBuilder, "check_ins");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnSqlite(migrationBuilder, "check_ins");

            migrationBuilder.DropTable(
                name: "check_ins");
        }
    }
}
