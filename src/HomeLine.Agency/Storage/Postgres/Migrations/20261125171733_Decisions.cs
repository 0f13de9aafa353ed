using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Decisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "decisions",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    round = table.Column<int>(type: "integer", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    patient = table.Column<string>(type: "text", nullable: false),
                    line = table.Column<string>(type: "text", nullable: true),
                    question = table.Column<string>(type: "text", nullable: false),
                    choice = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    licensed_name = table.Column<string>(type: "text", nullable: false),
                    entered_by = table.Column<string>(type: "text", nullable: false),
                    decided_at = table.Column<long>(type: "bigint", nullable: false),
                    until = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_decisions", x => x.row);
                    table.ForeignKey(
                        name: "FK_decisions_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_decisions_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "order_requests",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    patient = table.Column<string>(type: "text", nullable: false),
                    line = table.Column<string>(type: "text", nullable: true),
                    asked_on = table.Column<string>(type: "text", nullable: false),
                    sentence = table.Column<string>(type: "text", nullable: false),
                    asked_by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_order_requests", x => x.row);
                    table.ForeignKey(
                        name: "FK_order_requests_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_order_requests_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_decisions_id",
                table: "decisions",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_decisions_key_round",
                table: "decisions",
                columns: new[] { "key", "round" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_decisions_line",
                table: "decisions",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_decisions_patient",
                table: "decisions",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_order_requests_id",
                table: "order_requests",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_order_requests_line",
                table: "order_requests",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_order_requests_patient",
                table: "order_requests",
                column: "patient");
            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "decisions", "order_requests");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "decisions", "order_requests");
            migrationBuilder.DropTable(
                name: "decisions");

            migrationBuilder.DropTable(
                name: "order_requests");
        }
    }
}
