using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class MapMapping : IEntityTypeConfiguration<AgencyMap>
{
    public void Configure(EntityTypeBuilder<AgencyMap> builder)
    {
        builder.OnlyRow("map").Changeable();
        builder.ComplexProperty(m => m.BranchPlace);
        builder.Property(m => m.Barriers).AsJson();
        builder.Property(m => m.Towns).AsJson();
        builder.Property(m => m.Drops).AsJson();
        builder.Property(m => m.Roads).AsJson();
    }
}
