using HomeLine.Agency.Mending;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class TroubleMapping : IEntityTypeConfiguration<FiledTrouble>
{
    public void Configure(EntityTypeBuilder<FiledTrouble> builder)
    {
        builder.NumberedRows("troubles").Changeable();
        builder.Property(t => t.Id).IsRequired();
        builder.HasIndex(t => t.Id).IsUnique();
        builder.Property(t => t.Entry).AsJson();
        builder.Property(t => t.Offer).AsJson();
        builder.OfPatient(t => t.Patient);
    }
}
