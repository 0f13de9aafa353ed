using HomeLine.LineCare.Ledger;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class LineEventMapping : IEntityTypeConfiguration<LineEvent>
{
    public void Configure(EntityTypeBuilder<LineEvent> builder)
    {
        builder.NumberedRows("line_events").WrittenOnce();
        builder.HasAlternateKey(e => e.Id);
        builder.Property(e => e.ConnectorsChanged).AsJson();
        builder.Property(e => e.LumensUsed).AsJson();
        builder.OfPatient(e => e.Patient);
        builder.OnLine(e => e.Line);
    }
}
