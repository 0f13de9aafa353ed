using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
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
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.CreateTable(
                name: "troubles",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    title = table.Column<string>(type: "TEXT", nullable: false),
                    entry = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: true),
                    filed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    filed_by = table.Column<string>(type: "TEXT", nullable: false),
                    state = table.Column<string>(type: "TEXT", nullable: false),
                    week = table.Column<string>(type: "TEXT", nullable: false),
                    week_version = table.Column<int>(type: "INTEGER", nullable: false),
                    offer = table.Column<string>(type: "TEXT", nullable: true),
                    stopped_as = table.Column<string>(type: "TEXT", nullable: true),
                    applied_answer = table.Column<string>(type: "TEXT", nullable: true),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    ended_at = table.Column<long>(type: "INTEGER", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
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
