using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Mending;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using Microsoft.EntityFrameworkCore;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Today;

public sealed class SendNotesTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_nurse_gets_one_note_that_names_nobody_and_the_call_still_has_to_be_made()
    {
        await using TestAgency agency = await MendedAsync(isDemo: false);
        var mail = new KeptMail();
        var notes = new SendNotes(agency.Databases, agency.Ask<AgencyClock>(), mail);

        Assert.Equal(1, await notes.SendAsync(Cancel));
        Assert.Equal(0, await notes.SendAsync(Cancel));

        (string address, string text) = Assert.Single(mail.Kept);
        Assert.Equal("juniper@agency.example", address);
        Assert.DoesNotContain(DemoAgency.Roster.Patients, p => text.Contains(p.Name, StringComparison.Ordinal) || text.Contains(p.Id.Value, StringComparison.Ordinal));
        await using AgencyDb db = agency.Open();
        ToTell told = (await db.ToTell.ToListAsync(Cancel)).Single(t => t.Person.Nurse == "N1");
        Assert.Null(told.DoneAt);
        Assert.Equal("note sent by mail", Assert.Single(told.Tries).What);
    }

    [Fact]
    public async Task The_demonstration_sends_nothing()
    {
        await using TestAgency agency = await MendedAsync(isDemo: true);
        var mail = new KeptMail();

        Assert.Equal(0, await new SendNotes(agency.Databases, agency.Ask<AgencyClock>(), mail).SendAsync(Cancel));

        Assert.Empty(mail.Kept);
    }

    private async Task<TestAgency> MendedAsync(bool isDemo)
    {
        TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 6, 45), roster => roster with { Profile = roster.Profile with { IsDemo = isDemo } });
        await using (AgencyDb db = agency.Open())
        {
            db.Users.Add(new Account { DisplayName = "Juniper", UserName = "juniper@agency.example", Email = "juniper@agency.example", NurseId = "N1" });
            await db.SaveChangesAsync(Cancel);
        }

        await agency.ApplyAsync(await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.AtMidnight(), Tuesday.Day, "ill")));
        return agency;
    }

    private sealed class KeptMail : INoteMail
    {
        public List<(string Address, string Text)> Kept { get; } = [];

        public bool IsOn => true;

        public Task<bool> SendAsync(string address, string subject, string text, CancellationToken cancel)
        {
            Kept.Add((address, $"{subject} {text}"));
            return Task.FromResult(true);
        }
    }
}
