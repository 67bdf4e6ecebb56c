using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace GameNight.Nights.Storage.Migrations
{
    /// <inheritdoc />
    public partial class HouseAroundTheNight : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.RenameColumn(
                name: "guest_id",
                table: "link_directory",
                newName: "subject");

            migrationBuilder.RenameIndex(
                name: "IX_link_directory_group_id_night_id_guest_id",
                table: "link_directory",
                newName: "IX_link_directory_group_id_night_id_subject");

            migrationBuilder.AddColumn<Instant>(
                name: "cancelled_at",
                table: "nights",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "moves",
                table: "nights",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'[]'");

            migrationBuilder.AddColumn<bool>(
                name: "sees_notes",
                table: "memberships",
                type: "boolean",
                nullable: false,
                defaultValue: true);

            migrationBuilder.AlterColumn<Guid>(
                name: "night_id",
                table: "link_directory",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Instant>(
                name: "former_since",
                table: "guests",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "is_standing",
                table: "guests",
                type: "boolean",
                nullable: false,
                defaultValue: true);

            migrationBuilder.AddColumn<bool>(
                name: "shows_name",
                table: "guests",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "measures",
                table: "accounts",
                type: "character varying(32)",
                maxLength: 32,
                nullable: false,
                defaultValue: "Metric");

            migrationBuilder.CreateTable(
                name: "account_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_account_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "FK_account_passkeys_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "bake_logs",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    facts = table.Column<string>(type: "jsonb", nullable: false),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_bake_logs", x => new { x.group_id, x.night_id });
                    table.ForeignKey(
                        name: "FK_bake_logs_nights_group_id_night_id",
                        columns: x => new { x.group_id, x.night_id },
                        principalTable: "nights",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "committed_doughs",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    envelope = table.Column<int>(type: "integer", nullable: false),
                    snapshot = table.Column<string>(type: "jsonb", nullable: false),
                    plan = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_committed_doughs", x => new { x.group_id, x.night_id });
                    table.ForeignKey(
                        name: "FK_committed_doughs_nights_group_id_night_id",
                        columns: x => new { x.group_id, x.night_id },
                        principalTable: "nights",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "host_invitations",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    for_name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    role = table.Column<string>(type: "character varying(32)", maxLength: 32, nullable: false),
                    sees_notes = table.Column<bool>(type: "boolean", nullable: false),
                    invited_by = table.Column<Guid>(type: "uuid", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    link_generation = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_host_invitations", x => new { x.group_id, x.id });
                    table.ForeignKey(
                        name: "FK_host_invitations_groups_group_id",
                        column: x => x.group_id,
                        principalTable: "groups",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "look_backs",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    night_id = table.Column<Guid>(type: "uuid", nullable: false),
                    guest_id = table.Column<Guid>(type: "uuid", nullable: false),
                    facts = table.Column<string>(type: "jsonb", nullable: false),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    last_key = table.Column<Guid>(type: "uuid", nullable: false),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_look_backs", x => new { x.group_id, x.night_id, x.guest_id });
                    table.ForeignKey(
                        name: "FK_look_backs_invitations_group_id_night_id_guest_id",
                        columns: x => new { x.group_id, x.night_id, x.guest_id },
                        principalTable: "invitations",
                        principalColumns: new[] { "group_id", "night_id", "guest_id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "recovery_codes",
                columns: table => new
                {
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code_hash = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recovery_codes", x => new { x.account_id, x.code_hash });
                    table.ForeignKey(
                        name: "FK_recovery_codes_accounts_account_id",
                        column: x => x.account_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "remembered_wishes",
                columns: table => new
                {
                    group_id = table.Column<Guid>(type: "uuid", nullable: false),
                    guest_id = table.Column<Guid>(type: "uuid", nullable: false),
                    facts = table.Column<string>(type: "jsonb", nullable: false),
                    consented_version = table.Column<int>(type: "integer", nullable: false),
                    consented_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_remembered_wishes", x => new { x.group_id, x.guest_id });
                    table.ForeignKey(
                        name: "FK_remembered_wishes_guests_group_id_guest_id",
                        columns: x => new { x.group_id, x.guest_id },
                        principalTable: "guests",
                        principalColumns: new[] { "group_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_account_passkeys_user_id",
                table: "account_passkeys",
                column: "user_id");

            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("host_invitations"));
            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("remembered_wishes"));
            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("committed_doughs"));
            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("bake_logs"));
            migrationBuilder.Sql(RowLevelSecurity.ForGroupTable("look_backs"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "account_passkeys");

            migrationBuilder.DropTable(
                name: "bake_logs");

            migrationBuilder.DropTable(
                name: "committed_doughs");

            migrationBuilder.DropTable(
                name: "host_invitations");

            migrationBuilder.DropTable(
                name: "look_backs");

            migrationBuilder.DropTable(
                name: "recovery_codes");

            migrationBuilder.DropTable(
                name: "remembered_wishes");

            migrationBuilder.DropColumn(
                name: "cancelled_at",
                table: "nights");

            migrationBuilder.DropColumn(
                name: "moves",
                table: "nights");

            migrationBuilder.DropColumn(
                name: "sees_notes",
                table: "memberships");

            migrationBuilder.DropColumn(
                name: "former_since",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "is_standing",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "shows_name",
                table: "guests");

            migrationBuilder.DropColumn(
                name: "measures",
                table: "accounts");

            migrationBuilder.RenameColumn(
                name: "subject",
                table: "link_directory",
                newName: "guest_id");

            migrationBuilder.RenameIndex(
                name: "IX_link_directory_group_id_night_id_subject",
                table: "link_directory",
                newName: "IX_link_directory_group_id_night_id_guest_id");

            migrationBuilder.AlterColumn<Guid>(
                name: "night_id",
                table: "link_directory",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);
        }
    }
}
