using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class LastOfTwoDevices : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "earlier_keys",
                table: "asked_guests",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'[]'");

            migrationBuilder.AddColumn<Instant>(
                name: "mail_at",
                table: "asked_guests",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "mail_fault",
                table: "asked_guests",
                type: "character varying(32)",
                maxLength: 32,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "mail_state",
                table: "asked_guests",
                type: "character varying(32)",
                maxLength: 32,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "mail_tries",
                table: "asked_guests",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "replaced",
                table: "asked_guests",
                type: "jsonb",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "earlier_keys",
                table: "answers",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'[]'");

            migrationBuilder.AddColumn<string>(
                name: "replaced",
                table: "answers",
                type: "jsonb",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "earlier_keys",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "mail_at",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "mail_fault",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "mail_state",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "mail_tries",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "replaced",
                table: "asked_guests");

            migrationBuilder.DropColumn(
                name: "earlier_keys",
                table: "answers");

            migrationBuilder.DropColumn(
                name: "replaced",
                table: "answers");
        }
    }
}
