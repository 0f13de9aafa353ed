using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

#pragma warning disable CA1814 // Prefer jagged arrays over multidimensional

namespace HomeLine.Agency.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Start : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "accounts",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    display_name = table.Column<string>(type: "TEXT", nullable: false),
                    nurse_id = table.Column<string>(type: "TEXT", nullable: true),
                    disabled_at = table.Column<long>(type: "INTEGER", nullable: true),
                    lockouts_in_a_row = table.Column<int>(type: "INTEGER", nullable: false),
                    user_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    password_hash = table.Column<string>(type: "TEXT", nullable: true),
                    security_stamp = table.Column<string>(type: "TEXT", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "TEXT", nullable: true),
                    phone_number = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "TEXT", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    access_failed_count = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_accounts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "audit_entries",
                columns: table => new
                {
                    sequence = table.Column<long>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    actor_id = table.Column<string>(type: "TEXT", nullable: false),
                    actor_name = table.Column<string>(type: "TEXT", nullable: false),
                    action = table.Column<string>(type: "TEXT", nullable: false),
                    subject = table.Column<string>(type: "TEXT", nullable: false),
                    detail = table.Column<string>(type: "TEXT", nullable: false),
                    previous_hash = table.Column<string>(type: "TEXT", nullable: false),
                    hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_audit_entries", x => x.sequence);
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    friendly_name = table.Column<string>(type: "TEXT", nullable: true),
                    xml = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "map",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false, defaultValue: 1L),
                    barriers = table.Column<string>(type: "TEXT", nullable: false),
                    towns = table.Column<string>(type: "TEXT", nullable: false),
                    drops = table.Column<string>(type: "TEXT", nullable: false),
                    roads = table.Column<string>(type: "TEXT", nullable: false),
                    width = table.Column<double>(type: "REAL", nullable: false),
                    height = table.Column<double>(type: "REAL", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    branch_place_x = table.Column<double>(type: "REAL", nullable: false),
                    branch_place_y = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_map", x => x.row);
                    table.CheckConstraint("ck_map_one_row", "row = 1");
                });

            migrationBuilder.CreateTable(
                name: "nurses",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    credential = table.Column<string>(type: "TEXT", nullable: false),
                    phone = table.Column<string>(type: "TEXT", nullable: false),
                    skills = table.Column<string>(type: "TEXT", nullable: false),
                    licences = table.Column<string>(type: "TEXT", nullable: false),
                    traits = table.Column<string>(type: "TEXT", nullable: false),
                    week = table.Column<string>(type: "TEXT", nullable: false),
                    leaves = table.Column<string>(type: "TEXT", nullable: false),
                    lunch_minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    overtime_minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    max_visits_a_day = table.Column<int>(type: "INTEGER", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    home_x = table.Column<double>(type: "REAL", nullable: false),
                    home_y = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_nurses", x => x.row);
                });

            migrationBuilder.CreateTable(
                name: "patients",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    born_on = table.Column<string>(type: "TEXT", nullable: true),
                    care_started_on = table.Column<string>(type: "TEXT", nullable: false),
                    therapy = table.Column<string>(type: "TEXT", nullable: false),
                    address = table.Column<string>(type: "TEXT", nullable: false),
                    phone = table.Column<string>(type: "TEXT", nullable: false),
                    access_notes = table.Column<string>(type: "TEXT", nullable: false),
                    contact = table.Column<string>(type: "TEXT", nullable: false),
                    state = table.Column<string>(type: "TEXT", nullable: false),
                    zone_id = table.Column<string>(type: "TEXT", nullable: false),
                    risks = table.Column<string>(type: "TEXT", nullable: false),
                    language = table.Column<string>(type: "TEXT", nullable: false),
                    practitioner = table.Column<string>(type: "TEXT", nullable: false),
                    access_times = table.Column<string>(type: "TEXT", nullable: false),
                    required_traits = table.Column<string>(type: "TEXT", nullable: false),
                    excluded_traits = table.Column<string>(type: "TEXT", nullable: false),
                    refused_nurses = table.Column<string>(type: "TEXT", nullable: false),
                    known_nurses = table.Column<string>(type: "TEXT", nullable: false),
                    needs_skills = table.Column<string>(type: "TEXT", nullable: false),
                    crew_size = table.Column<int>(type: "INTEGER", nullable: false),
                    extra_minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    home_x = table.Column<double>(type: "REAL", nullable: false),
                    home_y = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_patients", x => x.row);
                    table.UniqueConstraint("AK_patients_id", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "policy_rules",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    value = table.Column<decimal>(type: "TEXT", nullable: false),
                    unit = table.Column<string>(type: "TEXT", nullable: false),
                    effective_from = table.Column<string>(type: "TEXT", nullable: false),
                    level = table.Column<string>(type: "TEXT", nullable: false),
                    standing = table.Column<string>(type: "TEXT", nullable: false),
                    source = table.Column<string>(type: "TEXT", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_policy_rules", x => x.row);
                });

            migrationBuilder.CreateTable(
                name: "profile",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false, defaultValue: 1L),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    branch = table.Column<string>(type: "TEXT", nullable: false),
                    zone_id = table.Column<string>(type: "TEXT", nullable: false),
                    day_phone = table.Column<string>(type: "TEXT", nullable: false),
                    on_call_phone = table.Column<string>(type: "TEXT", nullable: false),
                    emergency_number = table.Column<string>(type: "TEXT", nullable: false),
                    is_demo = table.Column<bool>(type: "INTEGER", nullable: false),
                    fixed_now = table.Column<long>(type: "INTEGER", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_profile", x => x.row);
                    table.CheckConstraint("ck_profile_one_row", "row = 1");
                });

            migrationBuilder.CreateTable(
                name: "published_versions",
                columns: table => new
                {
                    first_day = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    published_at = table.Column<long>(type: "INTEGER", nullable: false),
                    published_by = table.Column<string>(type: "TEXT", nullable: false),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    week = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_published_versions", x => new { x.first_day, x.version });
                });

            migrationBuilder.CreateTable(
                name: "roles",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    concurrency_stamp = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_roles", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "weeks",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    first_day = table.Column<string>(type: "TEXT", nullable: false),
                    is_draft = table.Column<bool>(type: "INTEGER", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false),
                    published_version = table.Column<int>(type: "INTEGER", nullable: false),
                    unmet = table.Column<string>(type: "TEXT", nullable: false),
                    saved_at = table.Column<long>(type: "INTEGER", nullable: false),
                    saved_by = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_weeks", x => x.row);
                });

            migrationBuilder.CreateTable(
                name: "account_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    user_id = table.Column<string>(type: "TEXT", nullable: false),
                    claim_type = table.Column<string>(type: "TEXT", nullable: true),
                    claim_value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_account_claims", x => x.id);
                    table.ForeignKey(
                        name: "FK_account_claims_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    provider_key = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    provider_display_name = table.Column<string>(type: "TEXT", nullable: true),
                    user_id = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_account_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "FK_account_logins_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "BLOB", maxLength: 1024, nullable: false),
                    user_id = table.Column<string>(type: "TEXT", nullable: false),
                    Data = table.Column<string>(type: "TEXT", nullable: false)
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
                name: "account_tokens",
                columns: table => new
                {
                    user_id = table.Column<string>(type: "TEXT", nullable: false),
                    login_provider = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_account_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "FK_account_tokens_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "activations",
                columns: table => new
                {
                    secret_hash = table.Column<string>(type: "TEXT", nullable: false),
                    account_id = table.Column<string>(type: "TEXT", nullable: false),
                    expires_at = table.Column<long>(type: "INTEGER", nullable: false),
                    used_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_activations", x => x.secret_hash);
                    table.ForeignKey(
                        name: "FK_activations_accounts_account_id",
                        column: x => x.account_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "exceptions",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    rule_id = table.Column<string>(type: "TEXT", nullable: false),
                    value = table.Column<decimal>(type: "TEXT", nullable: false),
                    owner = table.Column<string>(type: "TEXT", nullable: false),
                    through = table.Column<string>(type: "TEXT", nullable: false),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_exceptions", x => x.row);
                    table.ForeignKey(
                        name: "FK_exceptions_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "holds",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    from = table.Column<string>(type: "TEXT", nullable: false),
                    through = table.Column<string>(type: "TEXT", nullable: true),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_holds", x => x.row);
                    table.ForeignKey(
                        name: "FK_holds_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "lines",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    lumens = table.Column<string>(type: "TEXT", nullable: false),
                    site = table.Column<string>(type: "TEXT", nullable: false),
                    inserted_on = table.Column<string>(type: "TEXT", nullable: true),
                    tip_confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    inserted_length_cm = table.Column<decimal>(type: "TEXT", nullable: true),
                    outside_length_cm = table.Column<decimal>(type: "TEXT", nullable: true),
                    securement = table.Column<string>(type: "TEXT", nullable: false),
                    exit_site_healed = table.Column<bool>(type: "INTEGER", nullable: false),
                    dressing_minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_lines", x => x.row);
                    table.UniqueConstraint("AK_lines_id", x => x.id);
                    table.ForeignKey(
                        name: "FK_lines_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "printed_care_sheets",
                columns: table => new
                {
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    printed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    printed_by = table.Column<string>(type: "TEXT", nullable: false),
                    content_hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_printed_care_sheets", x => new { x.patient, x.number });
                    table.ForeignKey(
                        name: "FK_printed_care_sheets_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "account_roles",
                columns: table => new
                {
                    user_id = table.Column<string>(type: "TEXT", nullable: false),
                    role_id = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_account_roles", x => new { x.user_id, x.role_id });
                    table.ForeignKey(
                        name: "FK_account_roles_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_account_roles_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "role_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    role_id = table.Column<string>(type: "TEXT", nullable: false),
                    claim_type = table.Column<string>(type: "TEXT", nullable: true),
                    claim_value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_role_claims", x => x.id);
                    table.ForeignKey(
                        name: "FK_role_claims_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "visits",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    nurse = table.Column<string>(type: "TEXT", nullable: false),
                    second = table.Column<string>(type: "TEXT", nullable: true),
                    day = table.Column<string>(type: "TEXT", nullable: false),
                    start = table.Column<string>(type: "TEXT", nullable: false),
                    minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    care = table.Column<string>(type: "TEXT", nullable: false),
                    promise = table.Column<string>(type: "TEXT", nullable: false),
                    told_from = table.Column<string>(type: "TEXT", nullable: true),
                    held = table.Column<string>(type: "TEXT", nullable: true),
                    week = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visits", x => x.row);
                    table.ForeignKey(
                        name: "FK_visits_weeks_week",
                        column: x => x.week,
                        principalTable: "weeks",
                        principalColumn: "row",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "caregivers",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    person = table.Column<string>(type: "TEXT", nullable: false),
                    item = table.Column<string>(type: "TEXT", nullable: false),
                    valid_through = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: true),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_caregivers", x => x.row);
                    table.ForeignKey(
                        name: "FK_caregivers_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_caregivers_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "infusions",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: false),
                    lumen = table.Column<string>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    drug = table.Column<string>(type: "TEXT", nullable: false),
                    set_changed_by = table.Column<string>(type: "TEXT", nullable: false),
                    never_interrupt = table.Column<bool>(type: "INTEGER", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_infusions", x => x.row);
                    table.ForeignKey(
                        name: "FK_infusions_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_infusions_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "line_events",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: true),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    performed = table.Column<string>(type: "TEXT", nullable: true),
                    recorded_at = table.Column<long>(type: "INTEGER", nullable: false),
                    performer = table.Column<string>(type: "TEXT", nullable: false),
                    performer_name = table.Column<string>(type: "TEXT", nullable: false),
                    recorded_by = table.Column<string>(type: "TEXT", nullable: false),
                    certainty = table.Column<string>(type: "TEXT", nullable: false),
                    dressing = table.Column<string>(type: "TEXT", nullable: true),
                    securement_changed = table.Column<bool>(type: "INTEGER", nullable: false),
                    connectors_changed = table.Column<string>(type: "TEXT", nullable: false),
                    lumens_used = table.Column<string>(type: "TEXT", nullable: false),
                    outside_length_cm = table.Column<decimal>(type: "TEXT", nullable: true),
                    arm_girth_cm = table.Column<decimal>(type: "TEXT", nullable: true),
                    seal = table.Column<string>(type: "TEXT", nullable: false),
                    order = table.Column<string>(type: "TEXT", nullable: true),
                    voids = table.Column<string>(type: "TEXT", nullable: true),
                    note = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_line_events", x => x.row);
                    table.UniqueConstraint("AK_line_events_id", x => x.id);
                    table.ForeignKey(
                        name: "FK_line_events_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_line_events_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "orders",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: true),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    starts_on = table.Column<string>(type: "TEXT", nullable: false),
                    ends_on = table.Column<string>(type: "TEXT", nullable: true),
                    practitioner = table.Column<string>(type: "TEXT", nullable: false),
                    text = table.Column<string>(type: "TEXT", nullable: false),
                    item = table.Column<string>(type: "TEXT", nullable: true),
                    every_days = table.Column<int>(type: "INTEGER", nullable: true),
                    confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    weekdays = table.Column<string>(type: "TEXT", nullable: false),
                    dates = table.Column<string>(type: "TEXT", nullable: false),
                    start_from = table.Column<string>(type: "TEXT", nullable: true),
                    start_to = table.Column<string>(type: "TEXT", nullable: true),
                    dose_times = table.Column<string>(type: "TEXT", nullable: false),
                    visits_per_week = table.Column<int>(type: "INTEGER", nullable: true),
                    as_needed_visits = table.Column<int>(type: "INTEGER", nullable: true),
                    as_needed_used = table.Column<int>(type: "INTEGER", nullable: false),
                    skills = table.Column<string>(type: "TEXT", nullable: false),
                    setup_minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    work_minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    not_before = table.Column<string>(type: "TEXT", nullable: true),
                    needs_courier = table.Column<bool>(type: "INTEGER", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_orders", x => x.row);
                    table.ForeignKey(
                        name: "FK_orders_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_orders_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "outside_care",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: true),
                    where = table.Column<string>(type: "TEXT", nullable: false),
                    expected_on = table.Column<string>(type: "TEXT", nullable: false),
                    fall_back_from = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outside_care", x => x.row);
                    table.ForeignKey(
                        name: "FK_outside_care_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_outside_care_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "problem_reports",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    patient = table.Column<string>(type: "TEXT", nullable: false),
                    line = table.Column<string>(type: "TEXT", nullable: false),
                    filed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    filed_by = table.Column<string>(type: "TEXT", nullable: false),
                    report = table.Column<string>(type: "TEXT", nullable: false),
                    outcome = table.Column<string>(type: "TEXT", nullable: false),
                    result = table.Column<string>(type: "TEXT", nullable: true),
                    applied_answer = table.Column<string>(type: "TEXT", nullable: true),
                    reason = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_problem_reports", x => x.row);
                    table.UniqueConstraint("AK_problem_reports_id", x => x.id);
                    table.ForeignKey(
                        name: "FK_problem_reports_lines_line",
                        column: x => x.line,
                        principalTable: "lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_problem_reports_patients_patient",
                        column: x => x.patient,
                        principalTable: "patients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "people_to_tell",
                columns: table => new
                {
                    row = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    report = table.Column<string>(type: "TEXT", nullable: true),
                    week = table.Column<string>(type: "TEXT", nullable: false),
                    person = table.Column<string>(type: "TEXT", nullable: false),
                    done_at = table.Column<long>(type: "INTEGER", nullable: true),
                    done_by = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people_to_tell", x => x.row);
                    table.ForeignKey(
                        name: "FK_people_to_tell_problem_reports_report",
                        column: x => x.report,
                        principalTable: "problem_reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.InsertData(
                table: "roles",
                columns: new[] { "id", "concurrency_stamp", "name", "normalized_name" },
                values: new object[,]
                {
                    { "Administrator", "1", "Administrator", "ADMINISTRATOR" },
                    { "ClinicalManager", "1", "ClinicalManager", "CLINICALMANAGER" },
                    { "Coordinator", "1", "Coordinator", "COORDINATOR" },
                    { "Nurse", "1", "Nurse", "NURSE" }
                });

            migrationBuilder.CreateIndex(
                name: "IX_account_claims_user_id",
                table: "account_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_account_logins_user_id",
                table: "account_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_account_passkeys_user_id",
                table: "account_passkeys",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_account_roles_role_id",
                table: "account_roles",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "accounts",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "accounts",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_activations_account_id",
                table: "activations",
                column: "account_id");

            migrationBuilder.CreateIndex(
                name: "IX_caregivers_line",
                table: "caregivers",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_caregivers_patient",
                table: "caregivers",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_exceptions_patient_rule_id",
                table: "exceptions",
                columns: new[] { "patient", "rule_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_holds_patient_from",
                table: "holds",
                columns: new[] { "patient", "from" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_infusions_line_lumen_drug",
                table: "infusions",
                columns: new[] { "line", "lumen", "drug" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_infusions_patient",
                table: "infusions",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_line_events_line",
                table: "line_events",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_line_events_patient",
                table: "line_events",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_lines_patient",
                table: "lines",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_nurses_id",
                table: "nurses",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_orders_id",
                table: "orders",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_orders_line",
                table: "orders",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_orders_patient",
                table: "orders",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_outside_care_line",
                table: "outside_care",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_outside_care_patient",
                table: "outside_care",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_people_to_tell_id",
                table: "people_to_tell",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_people_to_tell_report",
                table: "people_to_tell",
                column: "report");

            migrationBuilder.CreateIndex(
                name: "IX_policy_rules_id_effective_from_level",
                table: "policy_rules",
                columns: new[] { "id", "effective_from", "level" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_problem_reports_line",
                table: "problem_reports",
                column: "line");

            migrationBuilder.CreateIndex(
                name: "IX_problem_reports_patient",
                table: "problem_reports",
                column: "patient");

            migrationBuilder.CreateIndex(
                name: "IX_role_claims_role_id",
                table: "role_claims",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "roles",
                column: "normalized_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_visits_nurse_booked_once",
                table: "visits",
                columns: new[] { "week", "nurse", "day", "start" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_visits_second_booked_once",
                table: "visits",
                columns: new[] { "week", "second", "day", "start" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_visits_week_id",
                table: "visits",
                columns: new[] { "week", "id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_weeks_first_day_is_draft",
                table: "weeks",
                columns: new[] { "first_day", "is_draft" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "account_claims");

            migrationBuilder.DropTable(
                name: "account_logins");

            migrationBuilder.DropTable(
                name: "account_passkeys");

            migrationBuilder.DropTable(
                name: "account_roles");

            migrationBuilder.DropTable(
                name: "account_tokens");

            migrationBuilder.DropTable(
                name: "activations");

            migrationBuilder.DropTable(
                name: "audit_entries");

            migrationBuilder.DropTable(
                name: "caregivers");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "exceptions");

            migrationBuilder.DropTable(
                name: "holds");

            migrationBuilder.DropTable(
                name: "infusions");

            migrationBuilder.DropTable(
                name: "line_events");

            migrationBuilder.DropTable(
                name: "map");

            migrationBuilder.DropTable(
                name: "nurses");

            migrationBuilder.DropTable(
                name: "orders");

            migrationBuilder.DropTable(
                name: "outside_care");

            migrationBuilder.DropTable(
                name: "people_to_tell");

            migrationBuilder.DropTable(
                name: "policy_rules");

            migrationBuilder.DropTable(
                name: "printed_care_sheets");

            migrationBuilder.DropTable(
                name: "profile");

            migrationBuilder.DropTable(
                name: "published_versions");

            migrationBuilder.DropTable(
                name: "role_claims");

            migrationBuilder.DropTable(
                name: "visits");

            migrationBuilder.DropTable(
                name: "accounts");

            migrationBuilder.DropTable(
                name: "problem_reports");

            migrationBuilder.DropTable(
                name: "roles");

            migrationBuilder.DropTable(
                name: "weeks");

            migrationBuilder.DropTable(
                name: "lines");

            migrationBuilder.DropTable(
                name: "patients");
        }
    }
}
