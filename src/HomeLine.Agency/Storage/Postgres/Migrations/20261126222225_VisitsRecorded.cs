using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
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
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    submission = table.Column<string>(type: "text", nullable: false),
                    patient = table.Column<string>(type: "text", nullable: false),
                    visit = table.Column<string>(type: "text", nullable: true),
                    day = table.Column<string>(type: "text", nullable: false),
                    arrived_at = table.Column<long>(type: "bigint", nullable: false),
                    left_at = table.Column<long>(type: "bigint", nullable: true),
                    nurse = table.Column<string>(type: "text", nullable: false),
                    signed_name = table.Column<string>(type: "text", nullable: false),
                    credential = table.Column<string>(type: "text", nullable: false),
                    signed_by = table.Column<string>(type: "text", nullable: false),
                    signed_at = table.Column<long>(type: "bigint", nullable: false),
                    entry = table.Column<string>(type: "jsonb", nullable: false),
                    events = table.Column<string>(type: "jsonb", nullable: false),
                    answered = table.Column<string>(type: "jsonb", nullable: false),
                    flags = table.Column<string>(type: "jsonb", nullable: false),
                    amends = table.Column<string>(type: "text", nullable: true),
                    needs_co_sign = table.Column<bool>(type: "boolean", nullable: false),
                    has_skin_harm = table.Column<bool>(type: "boolean", nullable: false),
                    stopped = table.Column<string>(type: "text", nullable: true)
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
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    record = table.Column<string>(type: "text", nullable: false),
                    patient = table.Column<string>(type: "text", nullable: false),
                    practitioner = table.Column<string>(type: "text", nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    since = table.Column<long>(type: "bigint", nullable: false),
                    told_at = table.Column<long>(type: "bigint", nullable: true),
                    told_to = table.Column<string>(type: "text", nullable: false),
                    told_by = table.Column<string>(type: "text", nullable: false),
                    said = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
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
                    record = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    by_id = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false)
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
            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "visit_records", "visit_cosignatures");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "visit_records", "visit_cosignatures");
            migrationBuilder.DropTable(
                name: "practitioner_notices");

            migrationBuilder.DropTable(
                name: "visit_cosignatures");

            migrationBuilder.DropTable(
                name: "visit_records");
        }
    }
}
