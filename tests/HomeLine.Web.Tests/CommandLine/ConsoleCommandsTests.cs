using System.Text.Json;
using HomeLine.Web.CommandLine;

namespace HomeLine.Web.Tests.CommandLine;

/// <summary>The program without a browser, on the demonstration's files. Invented data.</summary>
public sealed class ConsoleCommandsTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-console-");

    private static string Seed => Path.Combine(AppContext.BaseDirectory, "seed");

    public void Dispose() => folder.Delete(recursive: true);

    private string Out(string name) => Path.Combine(folder.FullName, name);

    private static int Run(params string[] args) => ConsoleCommands.Run(args);

    private static JsonElement Read(string file) => JsonDocument.Parse(File.ReadAllText(file)).RootElement;

    [Fact]
    public void Plan_writes_visits_due_windows_and_the_checkers_agreement()
    {
        Assert.Equal(0, Run("plan", "--roster", Seed, "--week", "2027-03-08", "--iterations", "50", "--out", Out("plan.json")));

        JsonElement plan = Read(Out("plan.json"));
        Assert.True(plan.GetProperty("checker").GetProperty("accepted").GetBoolean());
        Assert.Equal(0, plan.GetProperty("unmet").GetArrayLength());
        Assert.True(plan.GetProperty("visits").GetArrayLength() > 50);
        Assert.All(plan.GetProperty("due").EnumerateArray(), d => Assert.NotEqual("", d.GetProperty("because").GetProperty("sentence").GetString()));
    }

    [Fact]
    public void The_only_late_visits_are_those_that_were_late_before_the_week_began()
    {
        Run("plan", "--roster", Seed, "--week", "2027-03-08", "--iterations", "200", "--out", Out("plan.json"));

        string[] late = [.. Read(Out("plan.json")).GetProperty("visits").EnumerateArray()
            .Where(v => v.GetProperty("care").EnumerateArray().Any(c => c.GetProperty("late").GetBoolean()))
            .Select(v => $"{v.GetProperty("patient").GetString()} {v.GetProperty("day").GetString()}")
            .Order(StringComparer.Ordinal)];
        Assert.Equal(["P09 2027-03-08", "P30 2027-03-08", "P31 2027-03-08"], late);
    }

    [Fact]
    public void The_same_seed_writes_the_same_bytes()
    {
        foreach (string name in (string[])["a.json", "b.json"])
            Run("plan", "--roster", Seed, "--week", "2027-03-08", "--seed", "7", "--iterations", "50", "--out", Out(name));

        Assert.Equal(File.ReadAllBytes(Out("a.json")), File.ReadAllBytes(Out("b.json")));
    }

    [Fact]
    public void Due_writes_the_windows_alone()
    {
        Assert.Equal(0, Run("due", "--roster", Seed, "--at", "2027-03-08T06:00", "--out", Out("due.json")));

        Assert.Contains(Read(Out("due.json")).GetProperty("due").EnumerateArray(), d =>
            d.GetProperty("patient").GetString() == "P30" && d.GetProperty("item").GetString() == "dressing" && d.GetProperty("late").GetBoolean());
    }

    [Theory]
    [InlineData("plan", "--roster", "nowhere", "--week", "2027-03-08", "--out", "x.json")]
    [InlineData("plan", "--week", "2027-03-08", "--out", "x.json")]
    [InlineData("due", "--roster", "nowhere", "--at", "2027-03-08T06:00", "--out", "x.json")]
    [InlineData("plan", "--roster", ".", "--week", "next Monday", "--out", "x.json")]
    public void Bad_input_ends_with_2_and_writes_nothing(params string[] args)
    {
        Assert.Equal(2, Run(args));
        Assert.False(File.Exists("x.json"));
    }

    [Theory]
    [InlineData("2027-03-14T02:30")]
    [InlineData("2027-11-07T01:30")]
    [InlineData("today")]
    public void A_time_that_does_not_exist_or_happens_twice_is_refused(string at) =>
        Assert.Equal(2, Run("due", "--roster", Seed, "--at", at, "--out", Out("due.json")));

    [Fact]
    public void A_roster_with_a_bad_row_is_refused_whole()
    {
        foreach (string file in Directory.EnumerateFiles(Seed)) File.Copy(file, Out(Path.GetFileName(file)));
        File.AppendAllText(Out("patients.csv"), "P99,Nobody,03/04/2027\r\n");

        Assert.Equal(2, Run("due", "--roster", folder.FullName, "--at", "2027-03-08T06:00", "--out", Out("due.json")));
        Assert.False(File.Exists(Out("due.json")));
    }
}
