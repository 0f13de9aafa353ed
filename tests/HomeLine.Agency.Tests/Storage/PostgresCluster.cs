using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using HomeLine.Agency.Tests.Storage;
using Npgsql;

[assembly: AssemblyFixture(typeof(PostgresCluster))]

namespace HomeLine.Agency.Tests.Storage;

/// <summary>A private PostgreSQL cluster for one test run: started when first asked for, stopped and removed at the end.</summary>
public sealed class PostgresCluster : IAsyncDisposable
{
    private const string Template = "agency_template";
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"agency-cluster-{Guid.NewGuid():N}");
    private int _port;
    private int _made;

    /// <summary>Folder of the server's programs; empty when none is installed.</summary>
    private static string? Programs { get; } = Directory.Exists("/usr/lib/postgresql")
        ? Directory.GetDirectories("/usr/lib/postgresql").Select(d => Path.Combine(d, "bin"))
            .Where(d => File.Exists(Path.Combine(d, "initdb"))).Order(StringComparer.Ordinal).LastOrDefault()
        : null;

    /// <summary>A new database, already migrated.</summary>
    public async Task<string> NewDatabaseAsync(Func<string, Task> migrate)
    {
        Assert.SkipUnless(Programs is not null, "PostgreSQL is not installed");
        await _turn.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            if (_port == 0) await StartAsync(migrate);
            string name = string.Create(CultureInfo.InvariantCulture, $"agency_{++_made}");
            await ExecuteAsync($"CREATE DATABASE {name} TEMPLATE {Template}");
            return ConnectionTo(name);
        }
        finally
        {
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        _turn.Dispose();
        if (_port == 0) return;
        NpgsqlConnection.ClearAllPools();
        await RunAsync("pg_ctl", "-D", Path.Combine(_folder, "cluster"), "-m", "immediate", "-s", "stop");
        Directory.Delete(_folder, recursive: true);
    }

    private async Task StartAsync(Func<string, Task> migrate)
    {
        Directory.CreateDirectory(_folder);
        if (Environment.UserName == "root") await RunPlainAsync("chown", "postgres", _folder);
        string cluster = Path.Combine(_folder, "cluster");
        await RunAsync("pg_ctl", "-D", cluster, "-s", "-o", "-U agency -A trust -E UTF8 --locale=C -k -N", "initdb");
        int port = FreePort();
        string settings = string.Create(CultureInfo.InvariantCulture,
            $"-p {port} -k {_folder} -c listen_addresses=127.0.0.1 -c fsync=off -c max_connections=200");
        await RunAsync("pg_ctl", "-D", cluster, "-l", Path.Combine(_folder, "log"), "-o", settings, "-w", "-s", "start");
        _port = port;
        await ExecuteAsync($"CREATE DATABASE {Template}");
        await migrate(ConnectionTo(Template));
        NpgsqlConnection.ClearAllPools();
    }

    private string ConnectionTo(string database) =>
        $"Host=127.0.0.1;Port={_port};Username=agency;Database={database};Include Error Detail=true;Maximum Pool Size=10";

    private async Task ExecuteAsync(string fixedText)
    {
        await using var connection = new NpgsqlConnection(ConnectionTo("postgres"));
        await connection.OpenAsync();
        await using NpgsqlCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // The names are made here and a database name takes no parameter.
        command.CommandText = fixedText;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>The server refuses to run as root.</summary>
    private static Task RunAsync(string program, params string[] arguments)
    {
        string path = Path.Combine(Programs!, program);
        return Environment.UserName == "root"
            ? RunPlainAsync("runuser", ["-u", "postgres", "--", path, .. arguments])
            : RunPlainAsync(path, arguments);
    }

    private static async Task RunPlainAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = Path.GetTempPath() };
        using Process process = Process.Start(start)!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
