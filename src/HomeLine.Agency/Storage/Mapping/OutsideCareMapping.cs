using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class OutsideCareMapping : IEntityTypeConfiguration<OutsideCare>
{
    public void Configure(EntityTypeBuilder<OutsideCare> builder)
    {
        builder.NumberedRows("outside_care").Changeable();
        builder.OfPatient(o => o.Patient);
        builder.OnLine(o => o.Line);
    }
}
