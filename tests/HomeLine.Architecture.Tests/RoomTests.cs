namespace HomeLine.Architecture.Tests;

/// <summary>The arrows between the rooms, as docs/decisions/0001-rooms-and-arrows.md draws them.</summary>
public class RoomTests
{
    [Theory]
    [InlineData("LineCare", "")]
    [InlineData("Planning", "")]
    [InlineData("Agency", "LineCare Planning")]
    [InlineData("Paper", "Agency")]
    [InlineData("Exchange", "Agency LineCare Planning")]
    [InlineData("Web", "Agency Exchange LineCare Paper Planning")]
    public void A_room_references_only_the_rooms_before_it(string room, string allowed)
    {
        string[] mayUse = allowed.Split(' ', StringSplitOptions.RemoveEmptyEntries);

        Expect.Nothing(new Room(room).References.Except(mayUse));
    }

    // The planner may hand exact sub-problems to a solver; the clocks of care need nothing but time.
    [Theory]
    [InlineData("LineCare", "NodaTime")]
    [InlineData("Planning", "Google.OrTools NodaTime")]
    public void A_pure_room_uses_NodaTime_and_at_most_a_solver(string room, string allowed)
    {
        var pure = new Room(room);
        string[] mayUse = allowed.Split(' ');

        Expect.Nothing(pure.AssembliesUsed.Where(name => name != "Google.Protobuf").Except(mayUse));
        Assert.Equal(mayUse.Append("Microsoft.CodeAnalysis.BannedApiAnalyzers").Order(StringComparer.Ordinal), pure.Packages);
    }

    [Theory]
    [InlineData("Microsoft.EntityFrameworkCore", "Agency Web")]
    [InlineData("Npgsql", "Agency Web")]
    [InlineData("PdfSharp", "Paper")]
    [InlineData("CsvHelper", "Exchange")]
    [InlineData("Google.OrTools", "Planning")]
    public void A_heavy_package_stays_in_its_room(string package, string rooms)
    {
        string[] mayUse = rooms.Split(' ');
        IEnumerable<string> users = new[] { "LineCare", "Planning", "Agency", "Paper", "Exchange", "Web" }
            .Where(room => new Room(room).AssembliesUsed.Any(name => name.StartsWith(package, StringComparison.Ordinal)));

        Expect.Nothing(users.Except(mayUse));
    }

    [Fact]
    public void Pages_and_parts_ask_the_agency_and_never_the_database()
    {
        IEnumerable<string> askers = Repository.WrittenCode("src/HomeLine.Web/")
            .Where(path => path.Contains("/Pages/", StringComparison.Ordinal) || path.Contains("/Parts/", StringComparison.Ordinal))
            .Where(path => Repository.Read(path).Contains("EntityFrameworkCore", StringComparison.Ordinal)
                || Repository.Read(path).Contains("DbContext", StringComparison.Ordinal));

        Expect.Nothing(askers);
    }
}
