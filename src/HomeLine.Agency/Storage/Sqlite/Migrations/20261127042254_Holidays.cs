using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Holidays : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "holidays",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    day = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    works = table.Column<string>(type: "TEXT", nullable: false),
                    off = table.Column<string>(type: "TEXT", nullable: false),
                    put_down_by = table.Column<string>(type: "TEXT", nullable: false),
                    put_down_at = table.Column<long>(type: "INTEGER", nullable: false),
                    taken_back = table.Column<string>(type: "TEXT", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_holidays", x => x.row);
                });

            migrationBuilder.CreateIndex(
                name: "IX_holidays_day",
                table: "holidays",
                column: "day");

            migrationBuilder.CreateIndex(
                name: "IX_holidays_id",
                table: "holidays",
                column: "id",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "holidays");
        }
    }
}
