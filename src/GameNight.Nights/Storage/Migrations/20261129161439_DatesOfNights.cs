using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class DatesOfNights : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "rhythm",
                table: "groups",
                type: "jsonb",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "date_choices",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    facts = table.Column<string>(type: "jsonb", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    opened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    state = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    chosen = table.Column<LocalDateTime>(type: "timestamp without time zone", nullable: true),
                    night_id = table.Column<Guid>(type: "uuid", nullable: true),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_date_choices", x => new { x.group_id, x.id });
                    table.ForeignKey(
                        name: "FK_date_choices_groups_group_id",
                        column: x => x.group_id,
                        principalTable: "groups",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asked_guests",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    choice_id = table.Column<Guid>(type: "uuid", nullable: false),
                    guest_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    link_generation = table.Column<int>(type: "integer", nullable: false),
                    is_needed = table.Column<bool>(type: "boolean", nullable: false),
                    answers = table.Column<string>(type: "jsonb", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    last_key = table.Column<Guid>(type: "uuid", nullable: false),
                    answered_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    is_late = table.Column<bool>(type: "boolean", nullable: false),
                    disowned_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asked_guests", x => new { x.group_id, x.choice_id, x.guest_id });
                    table.ForeignKey(
                        name: "FK_asked_guests_date_choices_group_id_choice_id",
                        columns: x => new { x.group_id, x.choice_id },
                        principalTable: "date_choices",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_asked_guests_guests_group_id_guest_id",
                        columns: x => new { x.group_id, x.guest_id },
                        principalTable: "guests",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_asked_guests_group_id_guest_id",
                table: "asked_guests",
                columns: new[] { "group_id", "guest_id" });

            migrationBuilder.CreateIndex(
                name: "IX_asked_guests_group_id_id",
                table: "asked_guests",
                columns: new[] { "group_id", "id" },
                unique: true);

            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("date_choices"));
            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("asked_guests"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "asked_guests");

            migrationBuilder.DropTable(
                name: "date_choices");

            migrationBuilder.DropColumn(
                name: "rhythm",
                table: "groups");
        }
    }
}
