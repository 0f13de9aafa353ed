using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class LineMapping : IEntityTypeConfiguration<Line>
{
    public void Configure(EntityTypeBuilder<Line> builder)
    {
        builder.NumberedRows("lines").Changeable();
        builder.HasAlternateKey(l => l.Id);
        builder.Property(l => l.Lumens).AsJson();
        builder.OfPatient(l => l.Patient);
    }
}
