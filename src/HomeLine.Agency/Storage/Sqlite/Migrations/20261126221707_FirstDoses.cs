using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Sqlite.Migrations
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
                type: "TEXT",
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
