using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class TroublesAndTries : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "tries",
                table: "people_to_tell",
                type: "jsonb",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.CreateTable(
                name: "troubles",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    entry = table.Column<string>(type: "jsonb", nullable: false),
                    patient = table.Column<string>(type: "text", nullable: true),
                    filed_at = table.Column<long>(type: "bigint", nullable: false),
                    filed_by = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    week = table.Column<string>(type: "text", nullable: false),
                    week_version = table.Column<int>(type: "integer", nullable: false),
                    offer = table.Column<string>(type: "jsonb", nullable: true),
                    stopped_as = table.Column<string>(type: "text", nullable: true),
                    applied_answer = table.Column<string>(type: "text", nullable: true),
                    reason = table.Column<string>(type: "text", nullable: false),
                    ended_at = table.Column<long>(type: "bigint", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_troubles", x => x.row);
                    table.ForeignKey(
                        name: "FK_troubles_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_troubles_id",
                table: "troubles",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_troubles_patient",
                table: "troubles",
                column: "patient");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "troubles");

            migrationBuilder.DropColumn(
                name: "tries",
                table: "people_to_tell");
        }
    }
}
