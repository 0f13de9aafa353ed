using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class OrdersAndReferrals : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "referrals",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    referred_at = table.Column<long>(type: "bigint", nullable: true),
                    entered_at = table.Column<long>(type: "bigint", nullable: false),
                    home_at = table.Column<long>(type: "bigint", nullable: true),
                    ordered_on = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: false),
                    entered_by = table.Column<string>(type: "text", nullable: false),
                    closed_at = table.Column<long>(type: "bigint", nullable: true),
                    closed_by = table.Column<string>(type: "text", nullable: false),
                    closed_because = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_referrals", x => x.row);
                });

            migrationBuilder.CreateTable(
                name: "verbal_orders",
                columns: table => new
                {
                    row = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    order = table.Column<string>(type: "text", nullable: false),
                    taken_at = table.Column<long>(type: "bigint", nullable: false),
                    taken_by = table.Column<string>(type: "text", nullable: false),
                    read_back = table.Column<bool>(type: "boolean", nullable: false),
                    signed_on = table.Column<string>(type: "text", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_verbal_orders", x => x.row);
                });

            migrationBuilder.CreateIndex(
                name: "IX_referrals_id",
                table: "referrals",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_verbal_orders_order",
                table: "verbal_orders",
                column: "order",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "referrals");

            migrationBuilder.DropTable(
                name: "verbal_orders");
        }
    }
}
