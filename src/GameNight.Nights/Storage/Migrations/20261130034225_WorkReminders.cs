using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class WorkReminders : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "reminded_minutes_ahead",
                table: "memberships",
                type: "integer",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "work_reminders",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    host_id = table.Column<Guid>(type: "uuid", nullable: false),
                    begins = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    state = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    queued_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    settled_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    tries = table.Column<int>(type: "integer", nullable: false),
                    fault = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_work_reminders", x => new { x.group_id, x.id });
                    table.ForeignKey(
                        name: "FK_work_reminders_memberships_group_id_host_id",
                        columns: x => new { x.group_id, x.host_id },
                        principalTable: "memberships",
                        principalColumns: new[] { "group_id", "host_id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_work_reminders_nights_group_id_night_id",
                        columns: x => new { x.group_id, x.night_id },
                        principalTable: "nights",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_work_reminders_group_id_host_id",
                table: "work_reminders",
                columns: new[] { "group_id", "host_id" });

            migrationBuilder.CreateIndex(
                name: "IX_work_reminders_group_id_night_id_host_id_begins",
                table: "work_reminders",
                columns: new[] { "group_id", "night_id", "host_id", "begins" },
                unique: true);

            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("work_reminders"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "work_reminders");

            migrationBuilder.DropColumn(
                name: "reminded_minutes_ahead",
                table: "memberships");
        }
    }
}
