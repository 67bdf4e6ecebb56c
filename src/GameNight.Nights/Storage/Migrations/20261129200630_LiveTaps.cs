using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class LiveTaps : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "live_taps",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    mark = table.Column<string>(type: "jsonb", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    taken_back_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_live_taps", x => new { x.group_id, x.night_id, x.id });
                    table.ForeignKey(
                        name: "FK_live_taps_nights_group_id_night_id",
                        columns: x => new { x.group_id, x.night_id },
                        principalTable: "nights",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("live_taps"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "live_taps");
        }
    }
}
