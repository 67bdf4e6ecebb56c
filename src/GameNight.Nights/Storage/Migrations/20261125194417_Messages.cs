using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class Messages : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "contact",
                table: "guests",
                type: "jsonb",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "feed_generation",
                table: "guests",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "messages",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    guest_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    about = table.Column<int>(type: "integer", nullable: false),
                    state = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    queued_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    settled_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    tries = table.Column<int>(type: "integer", nullable: false),
                    fault = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: true),
                    knew_moves = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_messages", x => new { x.group_id, x.id });
                    table.ForeignKey(
                        name: "FK_messages_invitations_group_id_night_id_guest_id",
                        columns: x => new { x.group_id, x.night_id, x.guest_id },
                        principalTable: "invitations",
                        principalColumns: new[] { "group_id", "night_id", "guest_id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "post_queue",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject = table.Column<Guid>(type: "uuid", nullable: false),
                    errand = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    due_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_post_queue", x => new { x.group_id, x.subject });
                });

            migrationBuilder.CreateIndex(
                name: "IX_messages_group_id_night_id_guest_id_kind_about",
                table: "messages",
                columns: new[] { "group_id", "night_id", "guest_id", "kind", "about" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_post_queue_due_at",
                table: "post_queue",
                column: "due_at");

            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("messages"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "messages");

            migrationBuilder.DropTable(
                name: "post_queue");

            migrationBuilder.DropColumn(
                name: "contact",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "feed_generation",
                table: "guests");
        }
    }
}
