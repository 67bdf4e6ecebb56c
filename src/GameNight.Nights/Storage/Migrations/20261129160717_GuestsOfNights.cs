using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class GuestsOfNights : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "household",
                table: "guests",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "is_one_off",
                table: "guests",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "said_by",
                table: "answers",
                type: "character varying(32)",
                maxLength: 32,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "waiting_number",
                table: "answers",
                type: "integer",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "household",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "is_one_off",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "said_by",
                table: "answers");

            migrationBuilder.DropColumn(
                name: "waiting_number",
                table: "answers");
        }
    }
}
