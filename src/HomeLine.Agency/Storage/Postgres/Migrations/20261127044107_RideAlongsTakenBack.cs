using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class RideAlongsTakenBack : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_ride_alongs_nurse_day",
                table: "ride_alongs");

            migrationBuilder.AddColumn<string>(
                name: "on_visit",
                table: "ride_alongs",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "round",
                table: "ride_alongs",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "visit",
                table: "ride_alongs",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "ride_alongs_taken_back",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    ride = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ride_alongs_taken_back", x => x.row);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ride_alongs_nurse_day_round",
                table: "ride_alongs",
                columns: new[] { "nurse", "day", "round" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ride_alongs_taken_back_ride",
                table: "ride_alongs_taken_back",
                column: "ride",
                unique: true);

            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "ride_alongs_taken_back");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "ride_alongs_taken_back");
            migrationBuilder.DropTable(
                name: "ride_alongs_taken_back");

            migrationBuilder.DropIndex(
                name: "IX_ride_alongs_nurse_day_round",
                table: "ride_alongs");

            migrationBuilder.DropColumn(
                name: "on_visit",
                table: "ride_alongs");

            migrationBuilder.DropColumn(
                name: "round",
                table: "ride_alongs");

            migrationBuilder.DropColumn(
                name: "visit",
                table: "ride_alongs");

            migrationBuilder.CreateIndex(
                name: "IX_ride_alongs_nurse_day",
                table: "ride_alongs",
                columns: new[] { "nurse", "day" },
                unique: true);
        }
    }
}
