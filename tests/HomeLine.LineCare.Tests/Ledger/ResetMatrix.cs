using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Tests.Ledger;

/// <summary>The table of what resets what, row by row. R resets, L resets the named lumens, ? only if recorded, S starts, E ends, N nothing.
/// Common practice, no source.</summary>
public sealed class ResetMatrix
{
    private static readonly CareItem[] Columns =
    [
        CareItem.Dressing, CareItem.Securement, CareItem.Connector, CareItem.Set, CareItem.PortNeedle, CareItem.LumenFlush, CareItem.OutsideLength,
    ];

    [Theory]
    [InlineData(LineEventKind.DressingChanged, "R??NN?R")]
    [InlineData(LineEventKind.DressingReinforced, "NNNNNNN")]
    [InlineData(LineEventKind.SealReported, "NNNNNNN")]
    [InlineData(LineEventKind.PortAccessed, "RRRRRRN")]
    [InlineData(LineEventKind.PortDeaccessed, "EEEEEEN")]
    [InlineData(LineEventKind.ConnectorChanged, "NNLNN?N")]
    [InlineData(LineEventKind.SetChanged, "NNNLNNN")]
    [InlineData(LineEventKind.Flushed, "NNNNNLN")]
    [InlineData(LineEventKind.DoseGiven, "NNNNNLN")]
    [InlineData(LineEventKind.BloodDrawn, "NNNNNLN")]
    [InlineData(LineEventKind.BloodCultureDrawn, "NNLNNLN")]
    [InlineData(LineEventKind.Inserted, "SSSSNSS")]
    [InlineData(LineEventKind.Measured, "NNNNNNR")]
    [InlineData(LineEventKind.Exchanged, "EEEEEEE")]
    [InlineData(LineEventKind.Removed, "EEEEEEE")]
    [InlineData(LineEventKind.AdmittedToHospital, "NNNNNNN")]
    [InlineData(LineEventKind.ReturnedHome, "NNNNNNN")]
    [InlineData(LineEventKind.Refused, "NNNNNNN")]
    [InlineData(LineEventKind.Missed, "NNNNNNN")]
    [InlineData(LineEventKind.NotDone, "NNNNNNN")]
    [InlineData(LineEventKind.PhoneCall, "NNNNNNN")]
    [InlineData(LineEventKind.ConnectorCompromised, "NNNNNNN")]
    [InlineData(LineEventKind.TipConfirmed, "NNNNNNN")]
    public void Each_row_reads_as_the_table(LineEventKind kind, string row) =>
        Assert.Equal(row, string.Concat(Columns.Select(item => Letter(ResetTable.Of(kind, item)))));

    [Fact]
    public void Taking_the_needle_out_starts_the_idle_flush() =>
        Assert.Equal(ResetEffect.Starts, ResetTable.Of(LineEventKind.PortDeaccessed, CareItem.PortFlush));

    [Fact]
    public void Removal_starts_the_site_check_and_a_look_ends_it()
    {
        Assert.Equal(ResetEffect.Starts, ResetTable.Of(LineEventKind.Removed, CareItem.RemovalSiteCheck));
        Assert.Equal(ResetEffect.Ends, ResetTable.Of(LineEventKind.SiteChecked, CareItem.RemovalSiteCheck));
    }

    [Fact]
    public void Every_event_has_an_effect_on_every_item()
    {
        foreach (var kind in Enum.GetValues<LineEventKind>())
            foreach (var item in Enum.GetValues<CareItem>())
                Assert.True(Enum.IsDefined(ResetTable.Of(kind, item)));
    }

    private static char Letter(ResetEffect effect) => effect switch
    {
        ResetEffect.Resets => 'R',
        ResetEffect.ResetsNamedLumens => 'L',
        ResetEffect.IfRecorded => '?',
        ResetEffect.Starts => 'S',
        ResetEffect.Ends => 'E',
        _ => 'N',
    };
}
