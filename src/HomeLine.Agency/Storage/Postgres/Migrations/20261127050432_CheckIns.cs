using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
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
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    visit = table.Column<string>(type: "text", nullable: false),
                    day = table.Column<string>(type: "text", nullable: false),
                    nurse = table.Column<string>(type: "text", nullable: false),
                    is_out = table.Column<bool>(type: "boolean", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false)
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

            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "check_ins");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "check_ins");

            migrationBuilder.DropTable(
                name: "check_ins");
        }
    }
}
