using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class PolicyLibrary : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "policy_drafts",
                columns: table => new
                {
                    number = table.Column<int>(type: "integer", nullable: false),
                    effective_from = table.Column<string>(type: "text", nullable: false),
                    changes = table.Column<string>(type: "jsonb", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    drafted_by_id = table.Column<string>(type: "text", nullable: false),
                    drafted_by = table.Column<string>(type: "text", nullable: false),
                    drafted_at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_policy_drafts", x => x.number);
                });

            migrationBuilder.CreateTable(
                name: "policy_verdicts",
                columns: table => new
                {
                    draft = table.Column<int>(type: "integer", nullable: false),
                    fate = table.Column<string>(type: "text", nullable: false),
                    by_id = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_policy_verdicts", x => x.draft);
                    table.ForeignKey(
                        name: "FK_policy_verdicts_policy_drafts_draft",
                        column: x => x.draft,
                        principalTable: "policy_drafts",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });
            WrittenOnceTriggers.CreateOnPostgres(migrationBuilder, "policy_drafts", "policy_verdicts", "policy_rules");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            WrittenOnceTriggers.DropOnPostgres(migrationBuilder, "policy_drafts", "policy_verdicts", "policy_rules");
            migrationBuilder.DropTable(
                name: "policy_verdicts");

            migrationBuilder.DropTable(
                name: "policy_drafts");
        }
    }
}
