using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class FirstDoses : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "first_dose",
                table: "orders",
                type: "jsonb",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "first_dose",
                table: "orders");
        }
    }
}
