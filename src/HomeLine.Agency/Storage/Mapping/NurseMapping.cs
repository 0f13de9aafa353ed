using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class NurseMapping : IEntityTypeConfiguration<NurseFile>
{
    public void Configure(EntityTypeBuilder<NurseFile> builder)
    {
        builder.NumberedRows("nurses").Changeable();
        builder.Property(n => n.Id).IsRequired();
        builder.HasIndex(n => n.Id).IsUnique();
        builder.ComplexProperty(n => n.Home);
        builder.Property(n => n.Skills).AsJson();
        builder.Property(n => n.SignOffs).AsJson();
        builder.Property(n => n.Licences).AsJson();
        builder.Property(n => n.VisitCaps).AsJson();
        builder.Property(n => n.Traits).AsJson();
        builder.Property(n => n.Week).AsJson();
        builder.Property(n => n.Leaves).AsJson();
    }
}
