using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class VisitsRecorded : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "visit_records",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    submission = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    visit = table.Column<string>(type: "TEXT", nullable: true),
                    day = table.Column<string>(type: "TEXT", nullable: false),
                    arrived_at = table.Column<long>(type: "INTEGER", nullable: false),
                    left_at = table.Column<long>(type: "INTEGER", nullable: true),
                    nurse = table.Column<string>(type: "TEXT", nullable: false),
                    signed_name = table.Column<string>(type: "TEXT", nullable: false),
                    credential = table.Column<string>(type: "TEXT", nullable: false),
                    signed_by = table.Column<string>(type: "TEXT", nullable: false),
                    signed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    entry = table.Column<string>(type: "TEXT", nullable: false),
                    events = table.Column<string>(type: "TEXT", nullable: false),
                    answered = table.Column<string>(type: "TEXT", nullable: false),
                    flags = table.Column<string>(type: "TEXT", nullable: false),
                    amends = table.Column<string>(type: "TEXT", nullable: true),
                    needs_co_sign = table.Column<bool>(type: "INTEGER", nullable: false),
                    has_skin_harm = table.Column<bool>(type: "INTEGER", nullable: false),
                    stopped = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visit_records", x => x.row);
                    table.UniqueConstraint("AK_visit_records_id", x => x.id);
                    table.ForeignKey(
                        name: "FK_visit_records_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "practitioner_notices",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    practitioner = table.Column<string>(type: "TEXT", nullable: false),
                    what = table.Column<string>(type: "TEXT", nullable: false),
                    since = table.Column<long>(type: "INTEGER", nullable: false),
                    told_at = table.Column<long>(type: "INTEGER", nullable: true),
                    told_to = table.Column<string>(type: "TEXT", nullable: false),
                    told_by = table.Column<string>(type: "TEXT", nullable: false),
                    said = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_practitioner_notices", x => x.row);
                    table.ForeignKey(
                        name: "FK_practitioner_notices_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_practitioner_notices_visit_records_record",
                        column: x => x.record,
                        principalTable: "visit_records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "visit_cosignatures",
                columns: table => new
                {
                    record = table.Column<string>(type: "TEXT", nullable: false),
                    by = table.Column<string>(type: "TEXT", nullable: false),
                    by_id = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visit_cosignatures", x => x.record);
                    table.ForeignKey(
                        name: "FK_visit_cosignatures_visit_records_record",
                        column: x => x.record,
                        principalTable: "visit_records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_practitioner_notices_id",
                table: "practitioner_notices",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_practitioner_notices_patient",
                table: "practitioner_notices",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_practitioner_notices_record",
                table: "practitioner_notices",
                column: "record");

            migrationBuilder.CreateIndex(
                name: "IX_visit_records_amends",
                table: "visit_records",
                column: "amends",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_visit_records_patient",
                table: "visit_records",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_visit_records_submission",
                table: "visit_records",
                column: "submission",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_visit_records_visit",
                table: "visit_records",
                column: "visit");
            WrittenOnceTriggers.CreateOnSqlite(migrationBuilder, "visit_records", "visit_cosignatures");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnSqlite(migrationBuilder, "visit_records", "visit_cosignatures");
            migrationBuilder.DropTable(
                name: "practitioner_notices");

            migrationBuilder.DropTable(
                name: "visit_cosignatures");

            migrationBuilder.DropTable(
                name: "visit_records");
        }
    }
}
