"""Statements by chance out of grammar/setwright.y itself, so that whatever the grammar learns is written here too.

What the grammar cannot know, a name or a date that means something, comes from a pool; which one fits is guessed from the
part of the grammar or the word before. A sentence is well formed and may still be refused for what it says.
"""
import os
import re

from program import TOP

BREAK = 'the end of the line'
TOKEN = re.compile(r'/\*.*?\*/|"[^"]*"|%empty|[A-Za-z_]\w*|[:|;{}]', re.S)
ENDINGS = re.compile(r'''"(?:\\.|[^"\\])*"|'.'|[{}]''', re.S)


# Any statement may stand in any body of the grammar; what belongs there is known by the word that begins it.
BODIES = {'gym': 'gym_part', 'lift': 'lift_part', 'athlete': 'athlete_part', 'scheme': 'chain', 'progression': 'when_part',
          'block': 'block_part', 'template': 'block_part', 'season': 'season_part', 'checks': 'checks_part',
          'deload': 'change', 'taper': 'change', 'adjust': 'change', 'day': 'plan_part', 'superset': 'plan_part',
          'week': 'block_part', 'weeks': 'block_part', 'diary': 'diary_part'}


class Grammar:
    def __init__(self):
        with open(os.path.join(TOP, 'grammar', 'setwright.y'), encoding='utf-8') as file:
            head, rules, _ = re.split(r'^%%$', file.read(), maxsplit=2, flags=re.M)
        self.words = dict(re.findall(r'\b([A-Z_]+) ("[^"]+")', ' '.join(re.findall(r'^%token .*$', head, re.M))))
        self.rules = self.read(rules)
        self.depth = self.depths()

    def read(self, text):
        """name: [[symbol, …], …], actions left out."""
        rules, name, at = {}, None, 0
        while at < len(text):
            match = TOKEN.search(text, at)
            if not match:
                break
            token, at = match.group(), match.end()
            if token == '{':
                at = self.behind_action(text, at)
            elif re.match(r'[A-Za-z_]', token) and re.match(r'\s*:', text[at:]) and not name:
                name = token
                rules[name] = [[]]
            elif token == ';':
                name = None
            elif token == '|':
                rules[name].append([])
            elif name and token[0] not in ':/%':
                rules[name][-1].append(token)
        return {name: [some for some in choices if 'error' not in some] for name, choices in rules.items()}

    @staticmethod
    def behind_action(text, at):
        open_braces = 1
        while open_braces:
            match = ENDINGS.search(text, at)
            open_braces += {'{': 1, '}': -1}.get(match.group(), 0)
            at = match.end()
        return at

    def depths(self):
        """How deep the shallowest tree of each rule is: what to choose when it is time to end."""
        depth, changed = {}, True
        while changed:
            changed = False
            for name, choices in self.rules.items():
                for some in choices:
                    parts = [depth.get(part) if part in self.rules else 0 for part in some]
                    if None not in parts and depth.get(name, 99) > max(parts, default=0) + 1:
                        depth[name] = max(parts, default=0) + 1
                        changed = True
        return depth


class Sentences:
    """`pool` gives a list of spellings for a rule of the grammar, a word before a name, or a kind of token."""

    def __init__(self, grammar, random, pool):
        self.grammar, self.r, self.pool = grammar, random, pool

    def sentence(self, rule, most=11):
        out = []
        self.derive(rule, most, out)
        text = ' '.join(out).replace(' - ', '-').replace(' %', '%').replace(' ,', ',').replace('( ', '(')
        return text.replace(' )', ')').replace(' ; }', ' }').replace('; ;', ';')

    def derive(self, symbol, left, out):
        rules, depth = self.grammar.rules, self.grammar.depth
        if symbol == 'statement':
            heads = [BODIES[word] for word in out if word in BODIES]
            symbol = heads[-1] if heads and self.r.random() < 0.9 else symbol
        if symbol in self.pool and symbol in rules:
            out.append(self.r.choice(self.pool[symbol]))
        elif symbol in rules:
            fit = [some for some in rules[symbol]
                   if all(part not in rules or depth[part] < left for part in some)]
            least = min(rules[symbol], key=lambda some: max((depth.get(part, 0) for part in some), default=0))
            for part in self.r.choice(fit or [least]):
                self.derive(part, left - 1, out)
        else:
            out.append(self.spelt(symbol, out))

    def spelt(self, token, out):
        before = out[-1] if out else ''
        if token == 'NAME':
            return self.r.choice(self.pool.get('NAME ' + before, self.pool['NAME']))
        if token in self.pool:
            return self.r.choice(self.pool[token])
        word = self.grammar.words.get(token, token).strip('"')
        return ';' if word == BREAK else word
