using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class StockNotesAndService : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "stock",
                table: "menu_items",
                type: "jsonb",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "served",
                table: "invitations",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ruling",
                table: "dietary_notes",
                type: "jsonb",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "stock",
                table: "menu_items");

            migrationBuilder.DropColumn(
                name: "served",
                table: "invitations");

            migrationBuilder.DropColumn(
                name: "ruling",
                table: "dietary_notes");
        }
    }
}
