using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class RideAlongs : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ride_alongs",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    nurse = table.Column<string>(type: "text", nullable: false),
                    supervisor = table.Column<string>(type: "text", nullable: false),
                    supervisor_name = table.Column<string>(type: "text", nullable: false),
                    day = table.Column<string>(type: "text", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    recorded_by = table.Column<string>(type: "text", nullable: false),
                    recorded_at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ride_alongs", x => x.row);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ride_alongs_id",
                table: "ride_alongs",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ride_alongs_nurse_day",
                table: "ride_alongs",
                columns: new[] { "nurse", "day" },
                unique: true);

            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "ride_alongs");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "ride_alongs");

            migrationBuilder.DropTable(
                name: "ride_alongs");
        }
    }
}
