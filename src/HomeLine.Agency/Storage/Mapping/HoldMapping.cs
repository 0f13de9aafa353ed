using HomeLine.LineCare;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class HoldMapping : IEntityTypeConfiguration<Hold>
{
    public void Configure(EntityTypeBuilder<Hold> builder)
    {
        builder.NumberedRows("holds").Changeable();
        builder.HasIndex(h => new { h.Patient, h.From }).IsUnique();
        builder.Property(h => h.Elsewhere).AsJson();
        builder.Ignore(h => h.Stay);
        builder.OfPatient(h => h.Patient);
    }
}
