"""The facts of a plan out of its formats, to be compared with each other."""
from decimal import Decimal


def plain_text(cell):
    """What a text cell says: an apostrophe before a formula's first character is a spreadsheet's mark for text."""
    return cell[1:] if len(cell) > 1 and cell[0] == "'" and cell[1] in '=+-@\t\r' else cell


def yaml_rows(tree):
    assert tree['setwright'] == 1
    for athlete in tree['athletes']:
        for block in athlete['blocks']:
            for week in block['weeks']:
                for day in week['days']:
                    for work in day['work']:
                        yield dict({k: v for k, v in work.items() if k != 'title'}, athlete=athlete['name'],
                                   block=block['name'], week=week['week'], date=day.get('date', ''), day=day['day'],
                                   lift=work['lift'])


def same_cell(key, cell, value):
    if value is None:
        return cell == ''
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return cell != '' and Decimal(cell) == Decimal(str(value))
    return isinstance(value, str) and plain_text(cell) == value
