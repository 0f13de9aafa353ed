using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace HomeLine.Agency.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class StaysSignOffsCompact : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "compact_states",
                table: "profile",
                type: "jsonb",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "sign_offs",
                table: "nurses",
                type: "jsonb",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "elsewhere",
                table: "holds",
                type: "jsonb",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "compact_states",
                table: "profile");

            migrationBuilder.DropColumn(
                name: "sign_offs",
                table: "nurses");

            migrationBuilder.DropColumn(
                name: "elsewhere",
                table: "holds");
        }
    }
}
