using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
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
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    referred_at = table.Column<long>(type: "INTEGER", nullable: true),
                    entered_at = table.Column<long>(type: "INTEGER", nullable: false),
                    home_at = table.Column<long>(type: "INTEGER", nullable: true),
                    ordered_on = table.Column<string>(type: "TEXT", nullable: true),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    entered_by = table.Column<string>(type: "TEXT", nullable: false),
                    closed_at = table.Column<long>(type: "INTEGER", nullable: true),
                    closed_by = table.Column<string>(type: "TEXT", nullable: false),
                    closed_because = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_referrals", x => x.row);
                });

            migrationBuilder.CreateTable(
                name: "verbal_orders",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    order = table.Column<string>(type: "TEXT", nullable: false),
                    taken_at = table.Column<long>(type: "INTEGER", nullable: false),
                    taken_by = table.Column<string>(type: "TEXT", nullable: false),
                    read_back = table.Column<bool>(type: "INTEGER", nullable: false),
                    signed_on = table.Column<string>(type: "TEXT", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
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
