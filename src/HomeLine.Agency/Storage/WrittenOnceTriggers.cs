using Microsoft.EntityFrameworkCore.Migrations;

namespace HomeLine.Agency.Storage;

/// <summary>The database's own refusal to change or delete rows that are written once.</summary>
internal static class WrittenOnceTriggers
{
    /// <summary>The tables of the first version; later ones are named by the migration that makes them.</summary>
    public static readonly string[] FirstTables = ["line_events", "audit_entries", "published_versions", "printed_care_sheets"];

    public static void CreateOnSqlite(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (string table in tables)
        {
            foreach (string action in (string[])["update", "delete"])
            {
                migration.Sql(
                    $"CREATE TRIGGER {table}_no_{action} BEFORE {action.ToUpperInvariant()} ON {table} " +
                    $"BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END;");
            }
        }
    }

    public static void DropOnSqlite(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (string table in tables)
        {
            migration.Sql($"DROP TRIGGER {table}_no_update;");
            migration.Sql($"DROP TRIGGER {table}_no_delete;");
        }
    }

    /// <summary>Once, before the first table.</summary>
    public static void CreateFunctionOnPostgres(MigrationBuilder migration) => migration.Sql(
        """
        CREATE FUNCTION refuse_rewriting() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          RAISE EXCEPTION '% is append-only', TG_TABLE_NAME;
        END $$;
        """);

    public static void DropFunctionOnPostgres(MigrationBuilder migration) => migration.Sql("DROP FUNCTION refuse_rewriting();");

    public static void CreateOnPostgres(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (string table in tables)
        {
            migration.Sql(
                $"CREATE TRIGGER {table}_no_rewriting BEFORE UPDATE OR DELETE OR TRUNCATE ON {table} " +
                "FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting();");
        }
    }

    public static void DropOnPostgres(MigrationBuilder migration, params IEnumerable<string> tables)
    {
        foreach (string table in tables) migration.Sql($"DROP TRIGGER {table}_no_rewriting ON {table};");
    }
}
