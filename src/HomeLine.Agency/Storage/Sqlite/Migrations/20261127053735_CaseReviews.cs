using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class CaseReviews : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "case_reviews",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    entry = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: true),
                    event_on = table.Column<string>(type: "TEXT", nullable: false),
                    counts = table.Column<bool>(type: "INTEGER", nullable: false),
                    definition = table.Column<string>(type: "TEXT", nullable: false),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    reviewed_by = table.Column<string>(type: "TEXT", nullable: false),
                    reviewed_at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_case_reviews", x => x.row);
                    table.ForeignKey(
                        name: "FK_case_reviews_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_case_reviews_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_case_reviews_entry",
                table: "case_reviews",
                column: "entry");

            migrationBuilder.CreateIndex(
                name: "IX_case_reviews_id",
                table: "case_reviews",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_case_reviews_line",
                table: "case_reviews",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_case_reviews_patient",
                table: "case_reviews",
                column: "patient");

            WrittenOnceTriggers.CreateOnSqlite(migrationBuilder, "case_reviews");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnSqlite(migrationBuilder, "case_reviews");

            migrationBuilder.DropTable(
                name: "case_reviews");
        }
    }
}
